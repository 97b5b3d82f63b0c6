package org.salvedge.manifest.grid;

import static javax.xml.stream.XMLStreamConstants.START_ELEMENT;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;

/**
 * Office Open XML workbooks (ECMA-376, transitional and strict), part by part as events. Relations that lead out of the file
 * are never followed; what the parts declare about their own size is not looked at.
 */
final class XlsxReader {
    private static final String ROOT_RELATIONS = "_rels/.rels";
    private static final int MOST_SHEETS = 1_000;

    /** @param type its last word, as transitional and strict files share it: worksheet, sharedStrings, styles */
    private record Relation(String type, String target) {}

    private record SheetEntry(String name, boolean visible, String relation) {}

    private final Parts parts;
    private final SafeXml xml = new SafeXml();
    private final Budget budget;
    private final List<SheetEntry> entries = new ArrayList<>();
    private boolean from1904;

    private XlsxReader(Parts parts, Budget budget) {
        this.parts = parts;
        this.budget = budget;
    }

    static Grid read(Parts parts, Budget budget) throws IOException {
        try {
            return new XlsxReader(parts, budget).read();
        } catch (XMLStreamException e) {
            throw BadFile.torn("one of its parts is no well-formed XML");
        }
    }

    private Grid read() throws IOException, XMLStreamException {
        parts.need("[Content_Types].xml").close();
        String workbook = "xl/workbook.xml";
        for (Relation relation : relations(ROOT_RELATIONS, "").values()) {
            if (relation.type.equals("officeDocument")) {
                workbook = relation.target;
            }
        }
        readWorkbook(workbook);
        Map<String, Relation> relations = relations(relationsOf(workbook), folder(workbook));
        @Nullable List<String> shared = null;
        List<NumberFormat> formats = List.of(NumberFormat.GENERAL);
        List<Grid.Note> notes = new ArrayList<>();
        for (Relation relation : relations.values()) {
            if (relation.type.equals("sharedStrings")) {
                try (InputStream in = parts.need(relation.target)) {
                    shared = XlsxTexts.read(xml.open(in), budget);
                }
            } else if (relation.type.equals("styles")) {
                formats = formats(relation.target, notes);
            }
        }
        List<Sheet> sheets = new ArrayList<>();
        for (SheetEntry entry : entries) {
            Relation relation = relations.get(entry.relation);
            if (relation == null) {
                throw BadFile.torn("its sheet \"" + entry.name + "\" is missing");
            }
            if (relation.type.equals("worksheet")) {
                SheetBuilder sheet = new SheetBuilder(entry.name, entry.visible, from1904, formats, budget);
                try (InputStream in = parts.need(relation.target)) {
                    new XlsxSheet(shared, sheet).read(xml.open(in));
                }
                sheets.add(sheet.build());
            }
        }
        return new Grid("an XLSX workbook", sheets, notes);
    }

    private void readWorkbook(String part) throws IOException, XMLStreamException {
        try (InputStream in = parts.need(part)) {
            XMLStreamReader reader = xml.open(in);
            while (reader.hasNext()) {
                if (SafeXml.next(reader) != START_ELEMENT) {
                    continue;
                }
                switch (reader.getLocalName()) {
                    case "workbookPr" -> from1904 = isTrue(SafeXml.attribute(reader, "date1904"));
                    case "sheet" -> addSheet(reader);
                    default -> {}
                }
            }
        }
    }

    private void addSheet(XMLStreamReader reader) {
        if (entries.size() >= MOST_SHEETS) {
            throw BadFile.tooLarge("has more than " + MOST_SHEETS + " sheets");
        }
        String name = CellText.clean(SafeXml.attribute(reader, "name", ""), 100);
        String state = SafeXml.attribute(reader, "state", "visible");
        entries.add(new SheetEntry(name, state.equals("visible"), SafeXml.attribute(reader, "id", "")));
    }

    private static boolean isTrue(@Nullable String value) {
        return "1".equals(value) || "true".equals(value);
    }

    private List<NumberFormat> formats(String part, List<Grid.Note> notes) throws IOException, XMLStreamException {
        try (InputStream in = parts.find(part)) {
            if (in == null) {
                notes.add(new Grid.Note(
                        0, part, "is missing from the file, so that dates look like numbers", "Check dates and codes"));
                return List.of(NumberFormat.GENERAL);
            }
            return XlsxFormats.read(xml.open(in));
        }
    }

    /** Relations of a part by their id; those that lead outside are left out. */
    private Map<String, Relation> relations(String part, String folder) throws IOException, XMLStreamException {
        Map<String, Relation> relations = new HashMap<>();
        try (InputStream in = parts.find(part)) {
            if (in == null) {
                if (part.equals(ROOT_RELATIONS)) {
                    return relations;
                }
                throw BadFile.torn("its part \"" + part + "\" is missing");
            }
            XMLStreamReader reader = xml.open(in);
            while (reader.hasNext()) {
                if (SafeXml.next(reader) == START_ELEMENT
                        && reader.getLocalName().equals("Relationship")) {
                    String type = SafeXml.attribute(reader, "Type", "");
                    if (!SafeXml.attribute(reader, "TargetMode", "").equals("External")) {
                        relations.put(
                                SafeXml.attribute(reader, "Id", ""),
                                new Relation(
                                        type.substring(type.lastIndexOf('/') + 1),
                                        resolve(folder, SafeXml.attribute(reader, "Target", ""))));
                    }
                }
            }
        }
        return relations;
    }

    private static String relationsOf(String part) {
        String folder = folder(part);
        return folder + "_rels/" + part.substring(folder.length()) + ".rels";
    }

    private static String folder(String part) {
        return part.substring(0, part.lastIndexOf('/') + 1);
    }

    /** A target relative to a folder of the package; {@code ..} never climbs out of the package. */
    private static String resolve(String folder, String target) {
        String path = target.startsWith("/") ? target.substring(1) : folder + target;
        List<String> steps = new ArrayList<>();
        for (String step : path.replace('\\', '/').split("/", -1)) {
            if (step.equals("..")) {
                if (!steps.isEmpty()) {
                    steps.remove(steps.size() - 1);
                }
            } else if (!step.isEmpty() && !step.equals(".")) {
                steps.add(step);
            }
        }
        return String.join("/", steps);
    }

    /** Whether the parts are those of an XLSX workbook, whatever the main part is called. */
    static boolean fits(Parts parts) {
        return parts.has("xl/workbook.xml")
                || parts.names().stream()
                                .anyMatch(name -> name.toLowerCase(Locale.ROOT).endsWith("worksheets/sheet1.xml"))
                        && parts.has("[Content_Types].xml");
    }
}
