/** All checks, in the order of the pages. */

import { check as allowReason } from "./allow-reason.ts";
import { check as allowUnused } from "./allow-unused.ts";
import type { Check } from "./check.ts";
import { check as circularFigure } from "./circular-figure.ts";
import { check as coilWire } from "./coil-wire.ts";
import { check as countMismatch } from "./count-mismatch.ts";
import { check as designatorSyntax } from "./designator-syntax.ts";
import { check as doubtfulMention } from "./doubtful-mention.ts";
import { check as duplicateFigure } from "./duplicate-figure.ts";
import { check as duplicatePart } from "./duplicate-part.ts";
import { check as emptySet } from "./empty-set.ts";
import { check as figureSyntax } from "./figure-syntax.ts";
import { check as formulaRange } from "./formula-range.ts";
import { check as frontMatter } from "./front-matter.ts";
import { check as hazardIncomplete } from "./hazard-incomplete.ts";
import { check as hazardLate } from "./hazard-late.ts";
import { check as hazardMissing } from "./hazard-missing.ts";
import { check as hazardWord } from "./hazard-word.ts";
import { check as headingEmpty } from "./heading-empty.ts";
import { check as heightOrder } from "./height-order.ts";
import { check as heldBackPart } from "./held-back-part.ts";
import { check as holeSize } from "./hole-size.ts";
import { check as leadBend } from "./lead-bend.ts";
import { check as longStep } from "./long-step.ts";
import { check as lookAlike } from "./look-alike.ts";
import { check as madeLate } from "./made-late.ts";
import { check as markSyntax } from "./mark-syntax.ts";
import { check as matchedLate } from "./matched-late.ts";
import { check as missingPart } from "./missing-part.ts";
import { check as notFittedPart } from "./not-fitted-part.ts";
import { check as notImperative } from "./not-imperative.ts";
import { check as numberUnit } from "./number-unit.ts";
import { check as overload } from "./overload.ts";
import { check as polarityNote } from "./polarity-note.ts";
import { check as powerUpMissing } from "./power-up-missing.ts";
import { check as powerUpOrder } from "./power-up-order.ts";
import { check as readingOutside } from "./reading-outside.ts";
import { check as readingRemedy } from "./reading-remedy.ts";
import { check as readingTolerance } from "./reading-tolerance.ts";
import { check as repeatedDesignator } from "./repeated-designator.ts";
import { check as repeatedWord } from "./repeated-word.ts";
import { check as screwLength } from "./screw-length.ts";
import { check as severalActions } from "./several-actions.ts";
import { check as socketFirst } from "./socket-first.ts";
import { check as staleFigure } from "./stale-figure.ts";
import { check as stalePartsTable } from "./stale-parts-table.ts";
import { check as statedValue } from "./stated-value.ts";
import { check as stepLabel } from "./step-label.ts";
import { check as stepPicture } from "./step-picture.ts";
import { check as timeSyntax } from "./time-syntax.ts";
import { check as tooTall } from "./too-tall.ts";
import { check as torqueLimit } from "./torque-limit.ts";
import { check as torqueMissing } from "./torque-missing.ts";
import { check as trialLeft } from "./trial-left.ts";
import { check as unitClash } from "./unit-clash.ts";
import { check as unknownHeight } from "./unknown-height.ts";
import { check as unknownName } from "./unknown-name.ts";
import { check as unknownPart } from "./unknown-part.ts";
import { check as unlistedConsumable } from "./unlisted-consumable.ts";
import { check as unlistedTool } from "./unlisted-tool.ts";
import { check as unmatched } from "./unmatched.ts";
import { check as unreadableList } from "./unreadable-list.ts";
import { check as valueMarking } from "./value-marking.ts";
import { check as wrongCount } from "./wrong-count.ts";

export const CHECKS: readonly Check[] = [
  unknownPart,
  missingPart,
  duplicatePart,
  wrongCount,
  statedValue,
  valueMarking,
  notFittedPart,
  heldBackPart,
  madeLate,
  matchedLate,
  unmatched,
  trialLeft,
  socketFirst,
  emptySet,
  heightOrder,
  timeSyntax,
  tooTall,
  torqueMissing,
  hazardMissing,
  hazardLate,
  hazardIncomplete,
  hazardWord,
  powerUpMissing,
  powerUpOrder,
  readingRemedy,
  figureSyntax,
  unknownName,
  unitClash,
  circularFigure,
  duplicateFigure,
  staleFigure,
  readingOutside,
  readingTolerance,
  formulaRange,
  screwLength,
  overload,
  coilWire,
  leadBend,
  torqueLimit,
  holeSize,
  unreadableList,
  designatorSyntax,
  repeatedDesignator,
  countMismatch,
  unknownHeight,
  markSyntax,
  doubtfulMention,
  frontMatter,
  stepLabel,
  stalePartsTable,
  allowUnused,
  allowReason,
  longStep,
  numberUnit,
  repeatedWord,
  severalActions,
  notImperative,
  unlistedTool,
  unlistedConsumable,
  headingEmpty,
  stepPicture,
  polarityNote,
  lookAlike,
];
