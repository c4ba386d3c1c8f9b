import { startRun } from '../../src/core/dynamics/index.ts';
import { onHelix } from './train.ts';
import { cannon } from './rivals.ts';
const inp=onHelix();
const cpu=(f:()=>void)=>{const c=process.cpuUsage().user;f();return (process.cpuUsage().user-c)/1000;};
let r=startRun(inp);
for(let k=0;k<40;k++){let over=false;const t=cpu(()=>{over=r.advance(20);});if(k%4==3){const t2=cpu(()=>cannon.run(20));console.log('ours',(400/t).toFixed(1),'cannon',(400/t2).toFixed(1),'ratio',(t2/t).toFixed(2));} if(over) r=startRun(inp);}
