import type { IncomingMessage } from 'node:http';
import { Fault } from './fault.ts';
import { saveTrace } from './save-trace.ts';

/** Most bytes that a trace may have. */
const MOST_BYTES = 1_000_000;

/** What the preview answers to a page that saves a trace. */
export interface TraceAnswer {
  readonly status: number;
  readonly body: { readonly message: string; readonly entry?: string };
}

/**
 * Answers a request to save a trace. Only pages of this very preview may ask: the `Origin` that every browser sends with such a
 * request must be the preview's own address, and the body must be JSON, which pages of other sites cannot send unasked.
 */
export async function answerTrace(folder: string, request: IncomingMessage): Promise<TraceAnswer> {
  const refuse = (status: number, message: string): TraceAnswer => ({ status, body: { message } });
  if (request.method !== 'POST') return refuse(405, 'Traces are sent with POST.');
  if (request.headers.origin !== `http://${request.headers.host}`)
    return refuse(403, 'Only a page of this preview may save a trace.');
  if (!/^application\/json\b/.test(request.headers['content-type'] ?? ''))
    return refuse(415, 'A trace is sent as JSON.');
  try {
    const text = await bodyOf(request);
    if (text === null) return refuse(413, 'The trace is too large.');
    const saved = await saveTrace(folder, parse(text));
    const where = saved.isNew ? `Written: ${saved.file}, a new entry.` : `Added to ${saved.file}, as one line.`;
    return { status: 200, body: { message: `${where} The page is built again now.`, entry: saved.entry } };
  } catch (error) {
    if (error instanceof Fault) return refuse(409, error.message);
    return refuse(
      500,
      `The trace could not be written (${(error as NodeJS.ErrnoException).code ?? 'unknown'}). Nothing was changed.`,
    );
  }
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

async function bodyOf(request: IncomingMessage): Promise<string | null> {
  const parts: Buffer[] = [];
  let size = 0;
  for await (const part of request) {
    size += (part as Buffer).length;
    if (size > MOST_BYTES) return null;
    parts.push(part as Buffer);
  }
  return Buffer.concat(parts).toString('utf8');
}
