import java.io.File;
import java.io.InputStream;
import org.apache.poi.openxml4j.opc.OPCPackage;
import org.apache.poi.openxml4j.opc.PackageAccess;
import org.apache.poi.util.XMLHelper;
import org.apache.poi.xssf.eventusermodel.ReadOnlySharedStringsTable;
import org.apache.poi.xssf.eventusermodel.XSSFReader;
import org.xml.sax.Attributes;
import org.xml.sax.InputSource;
import org.xml.sax.XMLReader;
import org.xml.sax.helpers.DefaultHandler;

/** The floor: Apache POI's event reader, raw values of the first sheet, nothing made of them. usage: EventReader FILE */
public final class EventReader extends DefaultHandler {
    private final ReadOnlySharedStringsTable shared;
    private final StringBuilder value = new StringBuilder();
    private boolean inside;
    private boolean isShared;
    private long cells;
    private long chars;

    private EventReader(ReadOnlySharedStringsTable shared) {
        this.shared = shared;
    }

    @Override
    public void startElement(String uri, String name, String qName, Attributes attributes) {
        if (name.equals("c")) {
            isShared = "s".equals(attributes.getValue("t"));
        } else if (name.equals("v") || name.equals("t")) {
            inside = true;
            value.setLength(0);
        }
    }

    @Override
    public void characters(char[] text, int start, int length) {
        if (inside) value.append(text, start, length);
    }

    @Override
    public void endElement(String uri, String name, String qName) {
        if (!inside) return;
        inside = false;
        String text = isShared ? shared.getItemAt(Integer.parseInt(value.toString())).getString() : value.toString();
        cells++;
        chars += text.length();
    }

    public static void main(String[] args) throws Exception {
        try (OPCPackage pack = OPCPackage.open(new File(args[0]), PackageAccess.READ)) {
            EventReader handler = new EventReader(new ReadOnlySharedStringsTable(pack));
            XMLReader xml = XMLHelper.newXMLReader();
            xml.setContentHandler(handler);
            try (InputStream sheet = new XSSFReader(pack).getSheetsData().next()) {
                xml.parse(new InputSource(sheet));
            }
            System.out.println(handler.cells + " cells, " + handler.chars + " characters");
        }
    }
}
