import { parseRatio } from '../../src/trains/parse-ratio.ts';
import { searchTrains } from '../../src/trains/search-trains.ts';
export async function run(brief: boolean): Promise<void> {
  for (const [r,k,lo,hi] of [['1/6.931',2,12,60],['12.5',3,12,120],['3.14159265358979',3,12,120],['12.5',4,12,120],['1.27',4,12,120]] as const)
  for (let i=0;i<(brief?1:5);i++){
    const counts=Array.from({length:hi-lo+1},(_,q)=>lo+q);
    const t=performance.now();
    const s=searchTrains({wanted:parseRatio(r),pairs:k,counts,top:20});
    let x=s.next(); while(!x.done) x=s.next();
    console.log(r,k,(performance.now()-t).toFixed(1),x.value.visited);
  }
}
