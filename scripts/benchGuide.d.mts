export function synthesize(
  steps: number,
  how?: {
    readonly stageSize?: number;
    readonly fault?: boolean;
    readonly figures?: number;
    readonly pictures?: number;
  },
): { readonly text: string; readonly list: string };
