/** Sparetooth as a library: the product's verbs. The command line and the page use this file alone. */
export { type Maker, makers } from '../gear-library/makers.ts';
export { type Material, materials } from '../gear-library/materials.ts';
export { processes } from '../gear-library/processes.ts';
export { defaultKit, instruments } from '../gear-library/reading-uncertainty.ts';
export { checkDrive } from './check-drive.ts';
export { checkMade } from './check-made.ts';
export { checkStrength, type StrengthOptions } from './check-strength.ts';
export { chooseSpanTeeth } from './choose-span-teeth.ts';
export { type DrawnGear, drawCounts, drawSpec, drawWheel, type WheelDrawing } from './draw.ts';
export { type DesignDrawing, describeMeant, drawDesign, type FormDrawing } from './draw-design.ts';
export { drawPair, type PairDrawing } from './draw-pair.ts';
export { drawTrain, type TrainDrawing } from './draw-train.ts';
export type { DriveReport } from './drive/drive-report.ts';
export { describeFail, Fail, type FailCode, failCodes, type PlainFail } from './fail.ts';
export { type FoundCompensation, findCompensation } from './find-compensation.ts';
export {
  findSubstitutes,
  type SubstituteOptions,
  type SubstituteProgress,
  type SubstitutesReport,
  searchSubstitutes,
  type WheelSubstitutes,
} from './find-substitutes.ts';
export { type FindTrainsOptions, findTrains } from './find-trains.ts';
export { type PartFormat, partFormats } from './formats/part-formats.ts';
export { type SheetFormat, sheetFormats } from './formats/sheet-formats.ts';
export { type HandedOver, type HandOverOptions, handOver } from './hand-over.ts';
export { identify } from './identify.ts';
export { checkPartsSize, checkSize } from './job/check-size.ts';
export { isCovered, kindOf } from './job/collect-evidence.ts';
export { type CompensationFile, formatCompensation, parseCompensation } from './job/compensation-file.ts';
export { formatParts } from './job/format-parts.ts';
export type { CandidateReport, IdentityReport, WheelReport } from './job/identity-report.ts';
export type { Job, Wheel } from './job/job-schema.ts';
export type { Notice } from './job/list-notices.ts';
export type { MadeReport } from './job/made-report.ts';
export { type ParsedJob, parseJob } from './job/parse-job.ts';
export { parseLength } from './job/parse-length.ts';
export { type BadRow, type PartsFile, type PartsRow, parseParts } from './job/parse-parts.ts';
export type { SubstituteRow } from './job/substitutes-report.ts';
export type { TrainRow, TrainsReport, WheelPick } from './job/trains-report.ts';
export { formatJob } from './job/write-job.ts';
export { type CouponFiles, layCoupon } from './lay-coupon.ts';
export { type MadeFile, type MadePart, type MakeOptions, make } from './make.ts';
export { laySheetPages, type MadeSheet, makeSheet, planSheet, type SheetOptions } from './make-sheet.ts';
export { couponForm } from './making/coupon-form.ts';
export { type ChangeKey, changeKeys, type PartChange } from './making/part-design.ts';
export type { DesignReport } from './making/report-design.ts';
export { papers, type SheetPage } from './making/sheet-page.ts';
export { tellDesign } from './making/tell-design.ts';
export { type CouponFace, traceCoupon } from './making/trace-coupon.ts';
export { nameFile } from './name-part-file.ts';
export { type RecordOptions, type RepairRecord, repairRecord } from './repair-record.ts';
export {
  type DrawnFaces,
  type ShapedPart,
  type ShapeOptions,
  type SolidDrawing,
  shapePart,
} from './shape-part.ts';
export type { StockPart } from './stock/stock-part.ts';
export { findFitLimits } from './strength/find-fit-limits.ts';
export type { StrengthReport } from './strength/strength-report.ts';
export type { FoundTrain, TrainAnswer, TrainProgress } from './trains/search-trains.ts';
export { capitalize } from './words/capitalize.ts';
export { findPitchGap } from './words/find-pitch-gap.ts';
export { namePitch } from './words/name-pitch.ts';
export { nameReading } from './words/name-reading.ts';
export { tellAngleOdds } from './words/tell-angle-odds.ts';
export { tellAnswerOdds } from './words/tell-answer-odds.ts';
export { tellMade } from './words/tell-made.ts';
export { tellOdds } from './words/tell-odds.ts';
export { tellSlip } from './words/tell-slip.ts';
export { tellSpeedError } from './words/tell-speed-error.ts';
export { tellStrength } from './words/tell-strength.ts';
