// Writes the books of a JSON list with exceljs. usage: NODE_PATH=node_modules node js_book.cjs LIST
const fs = require("fs");
const { createRequire } = require("module");
const ExcelJS = createRequire(process.env.NODE_PATH + "/x.js")("exceljs");

function value(v) {
  if (v === null || typeof v !== "object") return v;
  if ("date" in v) return new Date(v.date + "T00:00:00Z");
  if ("f" in v) return "c" in v ? { formula: v.f, result: v.c } : { formula: v.f };
  if ("err" in v) return { error: v.err };
  if ("rich" in v) return { richText: v.rich.map((text, i) => ({ text, font: { bold: i % 2 === 0 } })) };
  return v.v;
}

(async () => {
  for (const job of JSON.parse(fs.readFileSync(process.argv[2], "utf8"))) {
    const book = new ExcelJS.Workbook();
    book.created = book.modified = new Date("2026-01-01T00:00:00Z");
    if (job.date1904) book.properties.date1904 = true;
    for (const s of job.sheets) {
      const sheet = book.addWorksheet(s.name, { state: s.hidden ? "hidden" : "visible" });
      s.rows.forEach((row, r) => row.forEach((v, c) => {
        if (v === null) return;
        const cell = sheet.getCell(r + 1, c + 1);
        cell.value = value(v);
        if (v.fmt) cell.numFmt = v.fmt;
      }));
      s.merges.forEach(m => sheet.mergeCells(m));
      s.hiddenRows.forEach(r => { sheet.getRow(r).hidden = true; });
      s.hiddenCols.forEach(c => { sheet.getColumn(c).hidden = true; });
    }
    await book.xlsx.writeFile(job.path);
  }
})();
