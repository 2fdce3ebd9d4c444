import { it } from "vitest";
import { PlainFormulas } from "../src/workbook/unplug/plain-formula";
it("len", () => {
  const shapes:any={reading_times:{rows:16,columns:1},gravities:{rows:16,columns:1}};
  const s:any={shapeOf:(r:string)=>shapes[r]??{rows:1,columns:1},valuesOf:(r:string)=>Array.from({length:shapes[r]?.rows??1},()=>[""])};
  const p:any=new PlainFormulas(s);
  for (const f of ["GYLE.LOG.STEADY(reading_times,gravities,0.001,fg_expected,og,count_from)","GYLE.LOG.STEADY(reading_times,gravities,0.001,fg_expected,og)","GYLE.LOG.STEADY(reading_times,gravities,0.001,fg_expected)","GYLE.LOG.STEADY(reading_times,gravities)"]) { const t=p.text(f,{rows:1,columns:1},{row:0,column:0}); console.log(f,t.length); if(f.includes("count")) console.log(t); }
});
