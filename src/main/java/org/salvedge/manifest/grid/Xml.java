package org.salvedge.manifest.grid;

import com.ctc.wstx.api.WstxInputProperties;
import com.ctc.wstx.stax.WstxInputFactory;
import javax.xml.stream.XMLInputFactory;

/** Parsers that follow nothing and stop at bounds. */
final class Xml {
    private static final int DEEPEST = 200;
    private static final int LONGEST = 2_000_000;

    private Xml() {}

    static XMLInputFactory factory() {
        WstxInputFactory f = new WstxInputFactory();
        f.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        f.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        f.setProperty(XMLInputFactory.IS_NAMESPACE_AWARE, true);
        f.setProperty(XMLInputFactory.IS_COALESCING, false);
        f.setProperty(WstxInputProperties.P_MAX_ELEMENT_DEPTH, DEEPEST);
        f.setProperty(WstxInputProperties.P_MAX_TEXT_LENGTH, LONGEST);
        f.setProperty(WstxInputProperties.P_MAX_ATTRIBUTE_SIZE, LONGEST);
        return f;
    }
}
