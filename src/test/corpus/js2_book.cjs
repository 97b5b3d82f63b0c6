// Writes the books of a JSON list with write-excel-file. usage: NODE_PATH=node_modules node js2_book.cjs LIST
const fs = require("fs");
const { createRequire } = require("module");
const writeExcelFile = createRequire(process.env.NODE_PATH + "/x.js")("write-excel-file/node").default;

function cell(v) {
  if (v === null || typeof v !== "object") return v;
  if ("date" in v) return { value: new Date(v.date + "T00:00:00Z"), type: Date, format: v.fmt || "yyyy-mm-dd" };
  if ("f" in v) return { value: "=" + v.f, type: "Formula" };
  return { value: v.v, format: typeof v.v === "number" ? v.fmt : undefined };
}

(async () => {
  for (const job of JSON.parse(fs.readFileSync(process.argv[2], "utf8"))) {
    const sheets = job.sheets.map(s => ({ data: s.rows.map(row => row.map(cell)), sheet: s.name }));
    await writeExcelFile(sheets).toFile(job.path);
  }
})();
