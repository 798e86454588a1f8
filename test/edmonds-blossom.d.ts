declare module "edmonds-blossom" {
  /** Mates by vertex, -1 for none, of a matching with the greatest weight. */
  export default function blossom(
    edges: readonly (readonly [number, number, number])[],
    maxCardinality?: boolean,
  ): number[];
}
