export { type CampForecast, type CampOptions, camp, campJson, lastEntry_s } from "./camp/camp.ts";
export type * from "./camp/campResult.ts";
export { closeOut } from "./camp/closeOut.ts";
export type * from "./camp/closeOutResult.ts";
export { experiment } from "./camp/experiment.ts";
export type * from "./camp/experimentResult.ts";
export {
  historyText,
  inlineHistory,
  withoutOwnRecord,
  withoutRecord,
  withRecord,
} from "./camp/historyYaml.ts";
export { iceTest } from "./camp/iceTest.ts";
export type * from "./camp/iceTestResult.ts";
export { livedFile } from "./camp/livedFile.ts";
export type * from "./camp/logFile.ts";
export { entryLine, logDiff, mergeLogs } from "./camp/mergeLogs.ts";
export { readCloseOut } from "./camp/readCloseOut.ts";
export { readExperiment } from "./camp/readExperiment.ts";
export { type IceTest, readIceTest } from "./camp/readIceTest.ts";
export { type LogReading, readLog } from "./camp/readLog.ts";
export type * from "./camp/types.ts";
export { writeLog } from "./camp/writeLog.ts";
export { type EnsembleOptions, ensemble } from "./ensemble/ensemble.ts";
export { joinDraws } from "./ensemble/joinDraws.ts";
export { keepRuns } from "./ensemble/keepRuns.ts";
export { Outstanding } from "./ensemble/outstanding.ts";
export { bandOf } from "./ensemble/quantiles.ts";
export { buffersOf, type Reply, replyTo } from "./ensemble/reply.ts";
export { spreadOver, type TaskWorker } from "./ensemble/spread.ts";
export { tasksFor, workersFor } from "./ensemble/tasks.ts";
export { Cancelled, type Draws, type MemberTask, type RunHooks, type RunTasks } from "./ensemble/types.ts";
export { coldHours } from "./forecast/coldHours.ts";
export { forecast } from "./forecast/forecast.ts";
export type * from "./forecast/planResult.ts";
export type * from "./forecast/result.ts";
export type { Forecast } from "./forecast/types.ts";
export { foods } from "./matter/foods.ts";
export { highsSolver, type Solve } from "./plan/assign/solver.ts";
export type { Aim } from "./plan/leastPieces.ts";
export { mealMoments } from "./plan/mealTimes.ts";
export { failuresOf } from "./plan/need.ts";
export { enoughIce, planIce } from "./plan/planIce.ts";
export { type Planned, plannedFile } from "./plan/plannedFile.ts";
export type { EnoughIce } from "./plan/shortage.ts";
export { type WholeOptions, type WholePlan, wholePlan } from "./plan/wholePlan.ts";
export { DomainError, ModelError } from "./quantity/errors.ts";
export { massWords } from "./quantity/show.ts";
export type { UnitSystem } from "./quantity/units.ts";
export { localInstant_ms } from "./sky/localTime.ts";
export { type Answer, answerOf } from "./tell/answer.ts";
export { bookPictures } from "./tell/book/bookPictures.ts";
export type { BookPictures } from "./tell/book/options.ts";
export { tripBook } from "./tell/book/tripBook.ts";
export { booksText } from "./tell/booksText.ts";
export { planCalendar } from "./tell/calendar.ts";
export {
  type AnswerOptions,
  type CampAnswer,
  campAnswer,
  type EatRow,
  type ToldIce,
} from "./tell/campAnswer.ts";
export { campText } from "./tell/campText.ts";
export { checkText, problemsText } from "./tell/checkText.ts";
export { closeOutText } from "./tell/closeOutText.ts";
export { coldHoursText } from "./tell/coldHoursText.ts";
export { type CompareRow, compareRows } from "./tell/compareRows.ts";
export { compareText, pairWords, riskWords } from "./tell/compareText.ts";
export { coolerMoment, momentSaid, openings_h } from "./tell/coolerMoment.ts";
export { experimentText } from "./tell/experimentText.ts";
export { forecastText } from "./tell/forecastText.ts";
export { habitsText } from "./tell/habitsText.ts";
export { iceTestText } from "./tell/iceTestText.ts";
export { noPaint, type Paint } from "./tell/lines.ts";
export { entryWords, iceLevelWords } from "./tell/logWords.ts";
export { coldStair, coldStairData } from "./tell/pictures/coldStair.ts";
export { compareBands } from "./tell/pictures/compareBands.ts";
export { coolerStrip } from "./tell/pictures/coolerStrip.ts";
export { coolerStripData } from "./tell/pictures/coolerStripData.ts";
export { doubtBars } from "./tell/pictures/doubtBars.ts";
export { experimentPoster } from "./tell/pictures/experimentPoster.ts";
export { foodClock, foodClockData } from "./tell/pictures/foodClock.ts";
export { habitLadder } from "./tell/pictures/habitLadder.ts";
export { historyBands } from "./tell/pictures/historyBands.ts";
export { iceBand, iceBandData } from "./tell/pictures/iceBand.ts";
export { iceLevel } from "./tell/pictures/iceLevels.ts";
export { iceTestFit } from "./tell/pictures/iceTestFit.ts";
export { lookLadder } from "./tell/pictures/lookLadder.ts";
export { mergeCurves, mergeCurvesData } from "./tell/pictures/mergeCurves.ts";
export { packSection } from "./tell/pictures/packSection.ts";
export { section } from "./tell/pictures/section.ts";
export { stressGrid } from "./tell/pictures/stressGrid.ts";
export { standalone, type Theme } from "./tell/pictures/tokens.ts";
export { planText } from "./tell/planText.ts";
export { stressText } from "./tell/stressText.ts";
export { type PlanWhys, type Why, whysOf } from "./tell/why.ts";
export { worksheet } from "./tell/worksheet.ts";
export { editedTrip, type TripEdit } from "./trip/editTrip.ts";
export { forecastProblems } from "./trip/forecastProblems.ts";
export { type MenuReading, readMenuCsv } from "./trip/menuCsv.ts";
export { menuYaml, withMenu } from "./trip/menuYaml.ts";
export { newTripText } from "./trip/newTrip.ts";
export { readTrip, readTripObject } from "./trip/readTrip.ts";
export { type Template, templates } from "./trip/templates.ts";
export { type TripSource, tripsOf } from "./trip/tripSource.ts";
export { unitsOf } from "./trip/typedUnits.ts";
export type * from "./trip/types.ts";
export { compare } from "./whatif/compare.ts";
export { drainBands } from "./whatif/drainBands.ts";
export { habits } from "./whatif/habits.ts";
export { runTask } from "./whatif/runTask.ts";
export { stress } from "./whatif/stress.ts";
export type * from "./whatif/types.ts";
