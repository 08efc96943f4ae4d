/** A thread of the command line: does one work with the files it is told, one after the other. */
import { parentPort, workerData } from 'node:worker_threads';
import { startWork, type Item, type Job } from './works.ts';

/** What a worker is started with. */
export interface Orders {
  readonly job: Job;
  readonly cwd: string;
}

const port = parentPort!;
const { job, cwd } = workerData as Orders;
// What comes meanwhile waits at the port until somebody listens.
const work = await startWork(job, cwd);
port.on('message', (item: Item) => port.postMessage(work(item)));
