package org.salvedge.manifest.grid;

import com.ctc.wstx.api.WstxInputProperties;
import com.ctc.wstx.stax.WstxInputFactory;
import java.io.InputStream;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;

/** Pull reading of XML from strangers: no document type, no entities of its own, no outside, bounded depth and lengths. */
final class SafeXml {
    private static final int DEEPEST = 200;
    private static final int MOST_ATTRIBUTES = 500;
    private static final int LONGEST_ATTRIBUTE = 1 << 20;

    private final XMLInputFactory factory;

    SafeXml() {
        factory = new WstxInputFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
        factory.setProperty(XMLInputFactory.IS_COALESCING, false);
        factory.setProperty(WstxInputProperties.P_MAX_ELEMENT_DEPTH, DEEPEST);
        factory.setProperty(WstxInputProperties.P_MAX_ATTRIBUTES_PER_ELEMENT, MOST_ATTRIBUTES);
        factory.setProperty(WstxInputProperties.P_MAX_ATTRIBUTE_SIZE, LONGEST_ATTRIBUTE);
        // A text comes in pieces, and what the parts unpack to is bounded elsewhere, with its own words.
        factory.setProperty(WstxInputProperties.P_MAX_TEXT_LENGTH, 1L << 30);
        factory.setProperty(WstxInputProperties.P_MIN_TEXT_SEGMENT, 256);
        factory.setXMLResolver((publicId, systemId, base, namespace) -> {
            throw new XMLStreamException("outside entity");
        });
    }

    XMLStreamReader open(InputStream in) throws XMLStreamException {
        return factory.createXMLStreamReader(in);
    }

    /** Moves on by one event; a document type declaration ends the reading. */
    static int next(XMLStreamReader xml) throws XMLStreamException {
        int event = xml.next();
        if (event == XMLStreamConstants.DTD || event == XMLStreamConstants.ENTITY_REFERENCE) {
            throw new BadFile(
                    "holds a document type declaration or an entity of its own, which no spreadsheet needs",
                    "Open it in a spreadsheet program and save it anew");
        }
        return event;
    }

    /** The attribute of that local name in any namespace, or null. */
    static @Nullable String attribute(XMLStreamReader xml, String localName) {
        for (int i = 0; i < xml.getAttributeCount(); i++) {
            if (xml.getAttributeLocalName(i).equals(localName)) {
                return xml.getAttributeValue(i);
            }
        }
        return null;
    }

    static String attribute(XMLStreamReader xml, String localName, String otherwise) {
        String value = attribute(xml, localName);
        return value == null ? otherwise : value;
    }

    /** A whole number of an attribute or text; the other value where it is none. */
    static int whole(@Nullable String text, int otherwise) {
        if (text == null || text.isEmpty() || text.length() > 10) {
            return otherwise;
        }
        long value = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c < '0' || c > '9') {
                return otherwise;
            }
            value = value * 10 + (c - '0');
        }
        return value > Integer.MAX_VALUE ? otherwise : (int) value;
    }
}
