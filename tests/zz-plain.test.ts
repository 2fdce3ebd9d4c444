import { writeXlsx } from "hucre/xlsx";
import { it, expect } from "vitest";
import { toFileFormula } from "../src/bench/xlsx/formula-translation";
import { functionNamed } from "../src/functions/registry";
import { position } from "../src/workbook/plan/addresses";
import { shownByLibreOffice, isErrorShown } from "./support/libre-office";
import { plainCase, typedCalls } from "./support/plain-cases";
import { normalOf, uniformDraws } from "./support/fermentation-truths";
it("plain", async () => {
  const d = functionNamed("LOG.STEADY"); const u = uniformDraws(3);
  const cases:any[]=[]; let row=1; const calls:any[]=[...typedCalls(d,7,7)];
  for (let i=0;i<400;i++) { const dated=u()<.5?46000:0; const per=u()<.3?4:u()<.5?2:1; const n=2+Math.floor(u()*(per===4?28:9)); const fall=[0,0,.0005,.001,.004,.012][Math.floor(u()*6)]!; const sd=[0,.0003,.0005,.001][Math.floor(u()*4)]!; const last=u()<.15?1.045:1.01+u()*.006; const line=u()<.6?.001:0;
    const rows:any[]=[]; if(u()<.5) rows.push([dated+1,1.05]); for(let k=0;k<n;k++){ const t=2+k/per+(u()<.5?.1*u():0); let g=last+fall*(n/per+2-t)+sd*normalOf(u); if(line) g=Math.round(g*1000)/1000; rows.push([dated+t,Math.min(g,1.19)]);}
    if(u()<.3) rows.reverse();
    const from = u()<.3? dated+2+n/per-u()*4 : null;
    calls.push({label:"r"+i, typed:[rows.map(r=>[r[0]]),rows.map(r=>[r[1]]),null,u()<.6?1.011:null,u()<.5?1.05:null,from]}); }
  let longest=0; const why:any={}; const bump=(m:string)=>{why[m]=(why[m]??0)+1;}; 
  for (const inline of [false,true]) for (const {label,typed} of calls) { try { const m=plainCase(d,typed,label,row,inline); cases.push({...m,row}); row+=m.height; for(const f of m.formulas) longest=Math.max(longest,f.text.length);} catch(e:any){ bump(e.message);} }
  console.log(why,cases.length, "longest", longest);
  const cells=new Map<string,any>();
  for (const {cells:inputs,formulas,row} of cases){ for (const [a,v] of inputs){const at=position(a); cells.set(`${at.row-1},${at.column-1}`,{value:v,type:typeof v==="number"?"number":"string"});} formulas.forEach(({text}:any,i:number)=>cells.set(`${row-1},${20+i}`,{formula:toFileFormula(text)})); }
  const shown=shownByLibreOffice(await writeXlsx({sheets:[{name:"Plain",rows:Array.from({length:row},()=>[]),cells}]}));
  const count:any={}; let bad=0;
  for (const {label,formulas,row} of cases) formulas.forEach(({wanted}:any,i:number)=>{ const got=shown[row-1]?.[20+i]??""; if(typeof wanted==="object"? !isErrorShown(got): got!==wanted){bad++; if(bad<25)console.log(label,"got",got,"wanted",wanted);} if(typeof wanted==="string") count[wanted]=(count[wanted]??0)+1; });
  console.log(count,"bad",bad);
},300000);
