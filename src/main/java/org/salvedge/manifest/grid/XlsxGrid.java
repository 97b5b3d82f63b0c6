package org.salvedge.manifest.grid;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.apache.poi.ss.usermodel.BuiltinFormats;
import org.jspecify.annotations.Nullable;

/** XLSX, part by part, streaming (ECMA-376 Part 1). Links, macros and entities are never followed. */
final class XlsxGrid {
    private final ZipFile zip;
    private final Budget budget;
    private final XMLInputFactory xml = Xml.factory();
    private long unpacked;
    private final long mostUnpacked;

    private XlsxGrid(ZipFile zip, long packed, Budget budget) {
        this.zip = zip;
        this.budget = budget;
        this.mostUnpacked = budget.limits().unpackedFor(packed);
    }

    static List<Sheet> read(Path file, Budget budget) throws IOException {
        if (java.nio.file.Files.size(file) > budget.limits().fileBytes()) {
            throw BadFile.tooLarge("is too large");
        }
        try (ZipFile zip = ZipFile.builder().setPath(file).get()) {
            int parts = 0;
            for (var e = zip.getEntries(); e.hasMoreElements(); e.nextElement()) {
                if (++parts > budget.limits().parts()) {
                    throw BadFile.tooLarge("has too many parts");
                }
            }
            return new XlsxGrid(zip, java.nio.file.Files.size(file), budget).sheets();
        } catch (XMLStreamException e) {
            throw BadFile.torn("a part of it is no proper XML");
        } catch (java.util.zip.ZipException e) {
            throw BadFile.torn("the packed file is torn");
        }
    }

    private record Part(String name, String path, boolean visible) {}

    private List<Sheet> sheets() throws IOException, XMLStreamException {
        if (zip.getEntry("mimetype") != null && zip.getEntry("content.xml") != null) {
            throw BadFile.notATable(
                    "an OpenDocument spreadsheet", "Open it in a spreadsheet program and save it as XLSX or CSV");
        }
        if (zip.getEntry("xl/workbook.bin") != null) {
            throw BadFile.notATable(
                    "a binary workbook (XLSB)", "Open it in a spreadsheet program and save it as XLSX or CSV");
        }
        if (zip.getEntry("word/document.xml") != null) {
            throw BadFile.notATable("a text document", "Ask the seller for the spreadsheet itself");
        }
        String workbook = zip.getEntry("xl/workbook.xml") != null ? "xl/workbook.xml" : null;
        if (workbook == null) {
            throw BadFile.notATable("a packed archive", "Ask the seller for the spreadsheet itself");
        }
        Map<String, String> targets = new HashMap<>();
        each("xl/_rels/workbook.xml.rels", r -> {
            if (r.getLocalName().equals("Relationship")) {
                String target = attribute(r, "Target");
                String id = attribute(r, "Id");
                if (target != null && id != null && !"External".equals(attribute(r, "TargetMode"))) {
                    targets.put(id, target.startsWith("/") ? target.substring(1) : "xl/" + target);
                }
            }
        });
        boolean[] from1904 = new boolean[1];
        List<Part> parts = new ArrayList<>();
        each(workbook, r -> {
            switch (r.getLocalName()) {
                case "workbookPr" ->
                    from1904[0] = "1".equals(attribute(r, "date1904")) || "true".equals(attribute(r, "date1904"));
                case "sheet" -> {
                    String id = null;
                    for (int i = 0; i < r.getAttributeCount(); i++) {
                        id = r.getAttributeLocalName(i).equals("id") ? r.getAttributeValue(i) : id;
                    }
                    String path = id == null ? null : targets.get(id);
                    String name = attribute(r, "name");
                    if (path != null && name != null && path.contains("worksheets/")) {
                        String state = attribute(r, "state");
                        parts.add(new Part(CellText.clean(name, 100), path, state == null || state.equals("visible")));
                    }
                }
                default -> {}
            }
        });
        if (parts.isEmpty()) {
            throw BadFile.torn("no sheet is to be found in it");
        }
        List<NumberFormat> formats = formats();
        List<String> shared = shared();
        List<Sheet> sheets = new ArrayList<>();
        for (Part p : parts) {
            if (p.visible) {
                if (zip.getEntry(p.path) == null) {
                    throw BadFile.torn("the sheet \"" + p.name + "\" is missing");
                }
                sheets.add(sheet(p, from1904[0], formats, shared));
            }
        }
        return sheets;
    }

    private List<NumberFormat> formats() throws IOException, XMLStreamException {
        Map<Integer, String> codes = new HashMap<>();
        List<NumberFormat> formats = new ArrayList<>();
        boolean[] inCells = new boolean[1];
        if (zip.getEntry("xl/styles.xml") != null) {
            each("xl/styles.xml", r -> {
                switch (r.getLocalName()) {
                    case "numFmt" -> codes.put(number(attribute(r, "numFmtId"), -1), attribute(r, "formatCode"));
                    case "cellXfs" -> inCells[0] = true;
                    case "cellStyles", "dxfs" -> inCells[0] = false;
                    case "xf" -> {
                        if (inCells[0] && formats.size() < 70_000) {
                            int id = number(attribute(r, "numFmtId"), 0);
                            String code = codes.containsKey(id)
                                    ? codes.get(id)
                                    : id >= 0 && id < 164 ? BuiltinFormats.getBuiltinFormat(id) : null;
                            formats.add(NumberFormat.of(id, code));
                        }
                    }
                    default -> {}
                }
            });
        }
        if (formats.isEmpty()) {
            formats.add(NumberFormat.GENERAL);
        }
        return formats;
    }

    private List<String> shared() throws IOException, XMLStreamException {
        List<String> texts = new ArrayList<>();
        ZipArchiveEntry e = zip.getEntry("xl/sharedStrings.xml");
        if (e == null) {
            return texts;
        }
        XMLStreamReader r = open(e);
        StringBuilder text = new StringBuilder();
        boolean phonetic = false;
        while (r.hasNext()) {
            int event = r.next();
            refuseDtd(event);
            if (event == XMLStreamConstants.START_ELEMENT) {
                switch (r.getLocalName()) {
                    case "si" -> text.setLength(0);
                    case "rPh" -> phonetic = true;
                    case "t" -> {
                        String t = r.getElementText();
                        if (!phonetic && text.length() < 40_000) {
                            text.append(t);
                        }
                    }
                    default -> {}
                }
            } else if (event == XMLStreamConstants.END_ELEMENT) {
                if (r.getLocalName().equals("si")) {
                    String clean = CellText.clean(
                            CellText.unescaped(text.toString()), budget.limits().textLength());
                    budget.text(clean);
                    texts.add(clean);
                } else if (r.getLocalName().equals("rPh")) {
                    phonetic = false;
                }
            }
        }
        return texts;
    }

    private Sheet sheet(Part part, boolean from1904, List<NumberFormat> formats, List<String> shared)
            throws IOException, XMLStreamException {
        SheetBuilder sheet = new SheetBuilder(part.name, part.visible, from1904, formats, budget);
        XMLStreamReader r = open(java.util.Objects.requireNonNull(zip.getEntry(part.path)));
        int row = 0;
        int column = -1;
        while (r.hasNext()) {
            int event = r.next();
            refuseDtd(event);
            if (event != XMLStreamConstants.START_ELEMENT) {
                continue;
            }
            switch (r.getLocalName()) {
                case "row" -> {
                    row = Math.max(1, number(attribute(r, "r"), row + 1));
                    column = -1;
                    sheet.startRow(row);
                }
                case "c" -> {
                    String at = attribute(r, "r");
                    column = at == null ? column + 1 : column(at);
                    cell(r, sheet, column, attribute(r, "t"), number(attribute(r, "s"), 0), shared);
                }
                case "mergeCell" -> merge(sheet, attribute(r, "ref"));
                default -> {}
            }
        }
        return sheet.build();
    }

    private void cell(
            XMLStreamReader r, SheetBuilder sheet, int column, @Nullable String type, int style, List<String> shared)
            throws XMLStreamException {
        String value = null;
        boolean formula = false;
        StringBuilder inline = null;
        while (r.hasNext()) {
            int event = r.next();
            if (event == XMLStreamConstants.END_ELEMENT && r.getLocalName().equals("c")) {
                break;
            }
            if (event == XMLStreamConstants.START_ELEMENT) {
                switch (r.getLocalName()) {
                    case "v" -> value = r.getElementText();
                    case "f" -> formula = true;
                    case "t" -> {
                        inline = inline == null ? new StringBuilder() : inline;
                        inline.append(r.getElementText());
                    }
                    default -> {}
                }
            }
        }
        if (inline != null && value == null) {
            sheet.text(column, CellText.unescaped(inline.toString()));
        } else if (value != null) {
            put(sheet, column, type, style, shared, value);
        } else if (formula) {
            sheet.damaged(column, "", "is a formula without a stored value");
        }
    }

    private static void put(
            SheetBuilder sheet, int column, @Nullable String type, int style, List<String> shared, String value) {
        switch (type == null ? "n" : type) {
            case "s" -> {
                int i = number(value.strip(), -1);
                if (i >= 0 && i < shared.size()) {
                    sheet.cleanText(column, shared.get(i));
                } else {
                    sheet.damaged(column, value, "points to a text that is not there");
                }
            }
            case "str", "inlineStr", "d" -> sheet.text(column, CellText.unescaped(value));
            case "e" -> sheet.error(column, value);
            case "b" -> sheet.text(column, value.strip().equals("1") ? "TRUE" : "FALSE");
            default -> {
                try {
                    sheet.number(column, Double.parseDouble(value.strip()), style);
                } catch (NumberFormatException e) {
                    sheet.damaged(column, value, "is no number");
                }
            }
        }
    }

    private static void merge(SheetBuilder sheet, @Nullable String ref) {
        if (ref != null && ref.matches("[A-Z]{1,3}[0-9]{1,7}:[A-Z]{1,3}[0-9]{1,7}")) {
            String[] ends = ref.split(":");
            sheet.merge(row(ends[0]), column(ends[0]), row(ends[1]), column(ends[1]));
        }
    }

    private static int row(String at) {
        return Integer.parseInt(at.replaceAll("[A-Z]+", ""));
    }

    /** Column of a reference such as AB12, from 0; -1 where there is none. */
    private static int column(String at) {
        int c = 0;
        for (int i = 0; i < at.length() && i < 4; i++) {
            char ch = at.charAt(i);
            if (ch < 'A' || ch > 'Z') {
                break;
            }
            c = c * 26 + ch - 'A' + 1;
        }
        return c - 1;
    }

    /** No workbook needs a document type declaration; entities hide behind them. */
    private static void refuseDtd(int event) {
        if (event == XMLStreamConstants.DTD) {
            throw new BadFile(
                    "holds a document type declaration, which no spreadsheet needs",
                    "Open it in a spreadsheet program and save it anew");
        }
    }

    private interface Element {
        void at(XMLStreamReader r);
    }

    private void each(String part, Element element) throws IOException, XMLStreamException {
        ZipArchiveEntry e = zip.getEntry(part);
        if (e == null) {
            throw BadFile.torn("its part " + part + " is missing");
        }
        XMLStreamReader r = open(e);
        while (r.hasNext()) {
            int event = r.next();
            refuseDtd(event);
            if (event == XMLStreamConstants.START_ELEMENT) {
                element.at(r);
            }
        }
    }

    private XMLStreamReader open(ZipArchiveEntry entry) throws IOException, XMLStreamException {
        InputStream in = zip.getInputStream(entry);
        return xml.createXMLStreamReader(new Counted(in));
    }

    private static @Nullable String attribute(XMLStreamReader r, String name) {
        return r.getAttributeValue(null, name);
    }

    private static int number(@Nullable String text, int otherwise) {
        return text != null && text.matches("[0-9]{1,8}") ? Integer.parseInt(text) : otherwise;
    }

    /** Stops before a part swells beyond reason. */
    private final class Counted extends java.io.FilterInputStream {
        Counted(InputStream in) {
            super(in);
        }

        @Override
        public int read() throws IOException {
            int b = super.read();
            count(b < 0 ? 0 : 1);
            return b;
        }

        @Override
        public int read(byte[] b, int off, int len) throws IOException {
            int n = super.read(b, off, len);
            count(Math.max(0, n));
            return n;
        }

        private void count(int n) {
            unpacked += n;
            if (unpacked > mostUnpacked) {
                throw BadFile.tooLarge("swells beyond reason when unpacked");
            }
            budget.checkTime();
        }
    }
}
