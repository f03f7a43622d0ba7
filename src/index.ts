/** Sparetooth as a library: the product's verbs. The command line and the page use this file alone. */
export { processes } from '../gear-library/processes.ts';
export { Fail, type FailCode, failCodes } from './fail.ts';
export { type PartFormat, partFormats } from './formats/part-formats.ts';
export { identify } from './identify.ts';
export type { CandidateReport, IdentityReport, WheelReport } from './job/identity-report.ts';
export type { Job } from './job/job-schema.ts';
export { checkSize, type ParsedJob, parseJob } from './job/parse-job.ts';
export { formatJob } from './job/write-job.ts';
export { type MadeFile, type MadePart, type MakeOptions, make } from './make.ts';
