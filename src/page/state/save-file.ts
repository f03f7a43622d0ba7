import { formatJob, type Job } from '../../index.ts';

/** Hands a job over as the file that the command line reads. */
export function saveFile(job: Job): void {
  handOver(
    new TextEncoder().encode(formatJob(job)),
    `${fileName(job.title ?? 'job')}.json`,
    'application/json',
  );
}

/** Hands bytes over as a download; nothing leaves the machine. */
export function handOver(bytes: Uint8Array, name: string, mediaType: string): void {
  const url = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: mediaType }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The browser has taken the bytes by then; keeping the address would keep them in memory.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** Letters, digits and dashes of any script; what else a title holds becomes a dash. */
function fileName(title: string): string {
  return (
    title
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 80) || 'job'
  );
}
