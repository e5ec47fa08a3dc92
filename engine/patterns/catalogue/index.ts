import type { ErrorPattern } from '../pattern.ts';
import { addsAfterTheUnits } from './adds-after-the-units.ts';
import { addsForAFact } from './adds-for-a-fact.ts';
import { alwaysHandsOnOne } from './always-hands-on-one.ts';
import { carriesLostInAdding } from './carries-lost-in-adding.ts';
import { carriesOfTheRowBefore } from './carries-of-the-row-before.ts';
import { carryAddedBeforeMultiplying } from './carry-added-before-multiplying.ts';
import { carryBeforeTheLastLost } from './carry-before-the-last-lost.ts';
import { carryLostAtAZero } from './carry-lost-at-a-zero.ts';
import { carryMultiplies } from './carry-multiplies.ts';
import { carryNeverHandedOn } from './carry-never-handed-on.ts';
import { carryTakenAway } from './carry-taken-away.ts';
import { carryTenTimesItsSize } from './carry-ten-times-its-size.ts';
import { carryTwoPlacesUp } from './carry-two-places-up.ts';
import { columnsMultiplied } from './columns-multiplied.ts';
import { decimalsMultiplied } from './decimals-multiplied.ts';
import { endZerosDropped } from './end-zeros-dropped.ts';
import { endZerosStruckOffBeforeThePoint } from './end-zeros-struck-off-before-the-point.ts';
import { factDigitsSwapped } from './fact-digits-swapped.ts';
import { firstCarryEverywhere } from './first-carry-everywhere.ts';
import { lastCarryOfARowLost } from './last-carry-of-a-row-lost.ts';
import { lastCarryOfTheSumLost } from './last-carry-of-the-sum-lost.ts';
import { loneDigitsNotBroughtDown } from './lone-digits-not-brought-down.ts';
import { nearMissFacts } from './near-miss-facts.ts';
import { nineForOne } from './nine-for-one.ts';
import { oneFactMisremembered } from './one-fact-misremembered.ts';
import { oneGroupTooFew } from './one-group-too-few.ts';
import { oneGroupTooMany } from './one-group-too-many.ts';
import { oneTableShaky } from './one-table-shaky.ts';
import { oneTimesANumberIsOne } from './one-times-a-number-is-one.ts';
import { oneTimesANumberIsOneMore } from './one-times-a-number-is-one-more.ts';
import { oneTooManyHandedOn } from './one-too-many-handed-on.ts';
import { onlyTheUnitsRow } from './only-the-units-row.ts';
import { operandsNamedAsFact } from './operands-named-as-fact.ts';
import { partialsJoined } from './partials-joined.ts';
import { pointAsInAdding } from './point-as-in-adding.ts';
import { pointCountedFromTheLeft } from './point-counted-from-the-left.ts';
import { pointIgnored } from './point-ignored.ts';
import { pointOfTheMultiplicand } from './point-of-the-multiplicand.ts';
import { pointOfTheMultiplier } from './point-of-the-multiplier.ts';
import { productsSideBySide } from './products-side-by-side.ts';
import { rowMovedTwiceAsFar } from './row-moved-twice-as-far.ts';
import { rowNotMovedOver } from './row-not-moved-over.ts';
import { rowsAlignedOnTheLeft } from './rows-aligned-on-the-left.ts';
import { smallFiguresAddedAgain } from './small-figures-added-again.ts';
import { straightDownOnly } from './straight-down-only.ts';
import { sumCarryTwoPlacesUp } from './sum-carry-two-places-up.ts';
import { sumTensWritten } from './sum-tens-written.ts';
import { tensDigitForEveryRow } from './tens-digit-for-every-row.ts';
import { tensWrittenUnitsHandedOn } from './tens-written-units-handed-on.ts';
import { topRowAddedTwice } from './top-row-added-twice.ts';
import { unitsDigitForEveryRow } from './units-digit-for-every-row.ts';
import { zeroClosedUp } from './zero-closed-up.ts';
import { zeroOfTheMultiplierPassedOver } from './zero-of-the-multiplier-passed-over.ts';
import { zeroTimesANumberKept } from './zero-times-a-number-kept.ts';

/** Every error pattern that is known here. */
export const CATALOGUE: readonly ErrorPattern[] = [
  addsAfterTheUnits,
  addsForAFact,
  alwaysHandsOnOne,
  carriesLostInAdding,
  carriesOfTheRowBefore,
  carryAddedBeforeMultiplying,
  carryBeforeTheLastLost,
  carryLostAtAZero,
  carryMultiplies,
  carryNeverHandedOn,
  carryTakenAway,
  carryTenTimesItsSize,
  carryTwoPlacesUp,
  columnsMultiplied,
  decimalsMultiplied,
  endZerosDropped,
  endZerosStruckOffBeforeThePoint,
  factDigitsSwapped,
  firstCarryEverywhere,
  lastCarryOfARowLost,
  lastCarryOfTheSumLost,
  loneDigitsNotBroughtDown,
  nearMissFacts,
  nineForOne,
  oneFactMisremembered,
  oneGroupTooFew,
  oneGroupTooMany,
  oneTableShaky,
  oneTimesANumberIsOne,
  oneTimesANumberIsOneMore,
  oneTooManyHandedOn,
  onlyTheUnitsRow,
  operandsNamedAsFact,
  partialsJoined,
  pointAsInAdding,
  pointCountedFromTheLeft,
  pointIgnored,
  pointOfTheMultiplicand,
  pointOfTheMultiplier,
  productsSideBySide,
  rowMovedTwiceAsFar,
  rowNotMovedOver,
  rowsAlignedOnTheLeft,
  smallFiguresAddedAgain,
  straightDownOnly,
  sumCarryTwoPlacesUp,
  sumTensWritten,
  tensDigitForEveryRow,
  tensWrittenUnitsHandedOn,
  topRowAddedTwice,
  unitsDigitForEveryRow,
  zeroClosedUp,
  zeroOfTheMultiplierPassedOver,
  zeroTimesANumberKept,
];
