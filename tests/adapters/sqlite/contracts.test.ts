import { jobsContract } from '../../contracts/jobs.ts';
import { storeContract } from '../../contracts/store.ts';
import { sqlite } from './temporary.ts';

storeContract(sqlite);
jobsContract(sqlite);
