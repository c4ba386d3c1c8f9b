import { createChain } from '../../src/core/dynamics/chain.ts';
import { jointLaws, releases } from '../../src/core/dynamics/run.ts';
import { tabulateRoute } from '../../src/core/dynamics/routeTables.ts';
import { createEngine } from '../../src/core/dynamics/traction.ts';
import { sweepForward, sweepBack } from '../../src/core/dynamics/chainRows.ts';
import { onHelix } from './train.ts';
const inp=onHelix(); const {train}=inp; const n=train.vehicles.length;
const tables=tabulateRoute(inp.path.track,train,inp.options.forces,-1,40);
const eng=createEngine(train.vehicles[0],0); eng.setting=0.6;
const s0=new Float64Array(n); for(let i=0;i<n;i++) s0[i]=4-i*tables.spacing[0];
const ch=createChain(train,tables,jointLaws(train),releases(train),[eng],inp.options.forces,0.001,s0);
const cpu=(f:()=>void)=>{const c=process.cpuUsage().user;f();return (process.cpuUsage().user-c)/1000;};
const N=20000;
for(let k=0;k<12;k++){const t=cpu(()=>ch.advance(N)); 
 const a=cpu(()=>{for(let i=0;i<N;i++)sweepForward(ch.state)});const b=cpu(()=>{for(let i=0;i<N;i++)sweepBack(ch.state,false)});
 console.log('advance ns/v',(t*1e6/N/n).toFixed(1),'fwd',(a*1e6/N/n).toFixed(1),'back',(b*1e6/N/n).toFixed(1),'sweeps',ch.sweeps/((k+1)*N));}
