import type { ErrorPattern } from '../pattern.ts';
import { addsAfterTheUnits } from './adds-after-the-units.ts';
import { addsForAFact } from './adds-for-a-fact.ts';
import { alwaysHandsOnOne } from './always-hands-on-one.ts';
import { bothBarsLaidOnce } from './both-bars-laid-once.ts';
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
import { columnsAddedStraightDown } from './columns-added-straight-down.ts';
import { columnsMultiplied } from './columns-multiplied.ts';
import { countsBarsForBeads } from './counts-bars-for-beads.ts';
import { countsOneOver } from './counts-one-over.ts';
import { countsOneShort } from './counts-one-short.ts';
import { decimalsMultiplied } from './decimals-multiplied.ts';
import { emptySquaresNotRead } from './empty-squares-not-read.ts';
import { endZerosDropped } from './end-zeros-dropped.ts';
import { endZerosStruckOffBeforeThePoint } from './end-zeros-struck-off-before-the-point.ts';
import { exchangeLeftUndone } from './exchange-left-undone.ts';
import { exchangedOnTheSameSquare } from './exchanged-on-the-same-square.ts';
import { exchangedToTheRight } from './exchanged-to-the-right.ts';
import { exchangedTwoPlacesUp } from './exchanged-two-places-up.ts';
import { factDigitsSwapped } from './fact-digits-swapped.ts';
import { firstCarryEverywhere } from './first-carry-everywhere.ts';
import { largerPlaceCounts } from './larger-place-counts.ts';
import { lastCarryOfARowLost } from './last-carry-of-a-row-lost.ts';
import { lastCarryOfTheSumLost } from './last-carry-of-the-sum-lost.ts';
import { loneDigitsNotBroughtDown } from './lone-digits-not-brought-down.ts';
import { losesATenInCounting } from './loses-a-ten-in-counting.ts';
import { multiplicandBackToFront } from './multiplicand-back-to-front.ts';
import { multiplicandOneColumnTooFar } from './multiplicand-one-column-too-far.ts';
import { multiplierBackToFront } from './multiplier-back-to-front.ts';
import { nearMissFacts } from './near-miss-facts.ts';
import { nineBarsForTen } from './nine-bars-for-ten.ts';
import { nineForOne } from './nine-for-one.ts';
import { nothingLaidForTens } from './nothing-laid-for-tens.ts';
import { numberBuiltAsSpoken } from './number-built-as-spoken.ts';
import { oneBarTooFew } from './one-bar-too-few.ts';
import { oneBarTooMany } from './one-bar-too-many.ts';
import { oneFactMisremembered } from './one-fact-misremembered.ts';
import { oneGroupTooFew } from './one-group-too-few.ts';
import { oneGroupTooMany } from './one-group-too-many.ts';
import { oneLaidForAllTens } from './one-laid-for-all-tens.ts';
import { oneMoreThanTheTens } from './one-more-than-the-tens.ts';
import { onePlaceTooHighAboveTheUnits } from './one-place-too-high-above-the-units.ts';
import { oneTableShaky } from './one-table-shaky.ts';
import { oneTimesANumberIsOne } from './one-times-a-number-is-one.ts';
import { oneTimesANumberIsOneMore } from './one-times-a-number-is-one-more.ts';
import { oneTooManyHandedOn } from './one-too-many-handed-on.ts';
import { onlyLikePlaces } from './only-like-places.ts';
import { onlyTheUnitsRow } from './only-the-units-row.ts';
import { operandsNamedAsFact } from './operands-named-as-fact.ts';
import { otherDiagonalsAdded } from './other-diagonals-added.ts';
import { partialsJoined } from './partials-joined.ts';
import { pointAsInAdding } from './point-as-in-adding.ts';
import { pointCountedFromTheLeft } from './point-counted-from-the-left.ts';
import { pointIgnored } from './point-ignored.ts';
import { pointOfTheMultiplicand } from './point-of-the-multiplicand.ts';
import { pointOfTheMultiplier } from './point-of-the-multiplier.ts';
import { productsSideBySide } from './products-side-by-side.ts';
import { readBackToFront } from './read-back-to-front.ts';
import { rowMovedTwiceAsFar } from './row-moved-twice-as-far.ts';
import { rowNotMovedOver } from './row-not-moved-over.ts';
import { rowSaidWithoutItsZeros } from './row-said-without-its-zeros.ts';
import { rowsAlignedOnTheLeft } from './rows-aligned-on-the-left.ts';
import { rowsLaidTwiceAsFar } from './rows-laid-twice-as-far.ts';
import { slidStraightDown } from './slid-straight-down.ts';
import { slidTheOtherWay } from './slid-the-other-way.ts';
import { slidTooFarLeft } from './slid-too-far-left.ts';
import { smallFiguresAddedAgain } from './small-figures-added-again.ts';
import { straightDownOnly } from './straight-down-only.ts';
import { sumCarryTwoPlacesUp } from './sum-carry-two-places-up.ts';
import { sumTensWritten } from './sum-tens-written.ts';
import { tensDigitForEveryRow } from './tens-digit-for-every-row.ts';
import { tensOfARowTooManyBars } from './tens-of-a-row-too-many-bars.ts';
import { tensThrownAwayAfterTheSlide } from './tens-thrown-away-after-the-slide.ts';
import { tensWrittenUnitsHandedOn } from './tens-written-units-handed-on.ts';
import { topDigitLaidOneTooFar } from './top-digit-laid-one-too-far.ts';
import { topRowAddedTwice } from './top-row-added-twice.ts';
import { topRowLaidTwice } from './top-row-laid-twice.ts';
import { topmostPileLeftBehind } from './topmost-pile-left-behind.ts';
import { totalsReadSideBySide } from './totals-read-side-by-side.ts';
import { unitsAndTensSwappedInBuilding } from './units-and-tens-swapped-in-building.ts';
import { unitsDigitForEveryRow } from './units-digit-for-every-row.ts';
import { upperProductsOnePlaceTooLow } from './upper-products-one-place-too-low.ts';
import { upperRowsLeftLying } from './upper-rows-left-lying.ts';
import { zeroClosedUp } from './zero-closed-up.ts';
import { zeroOfTheMultiplierPassedOver } from './zero-of-the-multiplier-passed-over.ts';
import { zeroTimesANumberKept } from './zero-times-a-number-kept.ts';
import { zerosNotBuilt } from './zeros-not-built.ts';

/** Every error pattern that is known here. */
export const CATALOGUE: readonly ErrorPattern[] = [
  addsAfterTheUnits,
  addsForAFact,
  alwaysHandsOnOne,
  bothBarsLaidOnce,
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
  columnsAddedStraightDown,
  columnsMultiplied,
  countsBarsForBeads,
  countsOneOver,
  countsOneShort,
  decimalsMultiplied,
  emptySquaresNotRead,
  endZerosDropped,
  endZerosStruckOffBeforeThePoint,
  exchangeLeftUndone,
  exchangedOnTheSameSquare,
  exchangedToTheRight,
  exchangedTwoPlacesUp,
  factDigitsSwapped,
  firstCarryEverywhere,
  largerPlaceCounts,
  lastCarryOfARowLost,
  lastCarryOfTheSumLost,
  loneDigitsNotBroughtDown,
  losesATenInCounting,
  multiplicandBackToFront,
  multiplicandOneColumnTooFar,
  multiplierBackToFront,
  nearMissFacts,
  nineBarsForTen,
  nineForOne,
  nothingLaidForTens,
  numberBuiltAsSpoken,
  oneBarTooFew,
  oneBarTooMany,
  oneFactMisremembered,
  oneGroupTooFew,
  oneGroupTooMany,
  oneLaidForAllTens,
  oneMoreThanTheTens,
  onePlaceTooHighAboveTheUnits,
  oneTableShaky,
  oneTimesANumberIsOne,
  oneTimesANumberIsOneMore,
  oneTooManyHandedOn,
  onlyLikePlaces,
  onlyTheUnitsRow,
  operandsNamedAsFact,
  otherDiagonalsAdded,
  partialsJoined,
  pointAsInAdding,
  pointCountedFromTheLeft,
  pointIgnored,
  pointOfTheMultiplicand,
  pointOfTheMultiplier,
  productsSideBySide,
  readBackToFront,
  rowMovedTwiceAsFar,
  rowNotMovedOver,
  rowSaidWithoutItsZeros,
  rowsAlignedOnTheLeft,
  rowsLaidTwiceAsFar,
  slidStraightDown,
  slidTheOtherWay,
  slidTooFarLeft,
  smallFiguresAddedAgain,
  straightDownOnly,
  sumCarryTwoPlacesUp,
  sumTensWritten,
  tensDigitForEveryRow,
  tensOfARowTooManyBars,
  tensThrownAwayAfterTheSlide,
  tensWrittenUnitsHandedOn,
  topDigitLaidOneTooFar,
  topRowAddedTwice,
  topRowLaidTwice,
  topmostPileLeftBehind,
  totalsReadSideBySide,
  unitsAndTensSwappedInBuilding,
  unitsDigitForEveryRow,
  upperProductsOnePlaceTooLow,
  upperRowsLeftLying,
  zeroClosedUp,
  zeroOfTheMultiplierPassedOver,
  zeroTimesANumberKept,
  zerosNotBuilt,
];
