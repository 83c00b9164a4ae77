package puzzleworkshop.cutfiles.svg;

import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.xml.XMLConstants;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.parsers.SAXParserFactory;
import org.xml.sax.Attributes;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;
import org.xml.sax.XMLReader;
import org.xml.sax.ext.DefaultHandler2;
import puzzleworkshop.cutfiles.found.FoundLines;
import puzzleworkshop.cutfiles.found.Remark;
import puzzleworkshop.measure.Refused;

/**
 * An SVG file as a tree. External entities and document types are never loaded; the parser's secure mode limits what
 * entities may grow to; the number and the depth of elements are limited here.
 */
final class SvgTree extends DefaultHandler2 {

    static final String SVG = "http://www.w3.org/2000/svg";
    private static final String XLINK = "http://www.w3.org/1999/xlink";
    private static final int MOST_ELEMENTS = 500_000;
    static final int DEEPEST = 256;

    private final FoundLines found;
    private final Map<String, SvgNode> byId = new HashMap<>();
    private final List<SvgNode> sheets = new ArrayList<>();
    private SvgNode root;
    private SvgNode open;
    private boolean withoutNamespace;
    private int elements;
    private int depth;

    private SvgTree(FoundLines found) {
        this.found = found;
    }

    static SvgTree read(FoundLines found, InputStream bytes) {
        SvgTree tree = new SvgTree(found);
        try {
            SAXParserFactory factory = SAXParserFactory.newInstance();
            factory.setNamespaceAware(true);
            factory.setXIncludeAware(false);
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            factory.setFeature("http://xml.org/sax/features/external-general-entities", false);
            factory.setFeature("http://xml.org/sax/features/external-parameter-entities", false);
            factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
            XMLReader reader = factory.newSAXParser().getXMLReader();
            reader.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "");
            reader.setProperty(XMLConstants.ACCESS_EXTERNAL_SCHEMA, "");
            reader.setContentHandler(tree);
            reader.setErrorHandler(tree);
            reader.setEntityResolver(tree);
            reader.parse(new InputSource(bytes));
        } catch (SAXParseException damaged) {
            throw new Refused("cutfiles.file.damaged_row", found.name(), damaged.getLineNumber());
        } catch (SAXException | IOException damaged) {
            throw new Refused("cutfiles.file.damaged", found.name());
        } catch (ParserConfigurationException missing) {
            throw new IllegalStateException("The XML parser does not know a safety setting", missing);
        }
        return tree;
    }

    SvgNode root() {
        return root;
    }

    /** Style sheets in the file's order. */
    List<SvgNode> sheets() {
        return sheets;
    }

    /** The element that a reference such as {@code #name} means; null where there is none. */
    SvgNode referred(String reference) {
        String plain = reference.strip();
        return plain.startsWith("#") ? byId.get(plain.substring(1)) : null;
    }

    @Override
    public InputSource resolveEntity(String entity, String publicId, String base, String systemId) {
        return new InputSource(new StringReader(""));
    }

    @Override
    public void fatalError(SAXParseException damaged) throws SAXException {
        throw damaged;
    }

    @Override
    public void processingInstruction(String target, String content) {
        if (target.equals("xml-stylesheet")) {
            found.count(Remark.Kind.UNSURE, "cutfiles.svg.outside");
        }
    }

    @Override
    public void startElement(String space, String local, String qualified, Attributes given) {
        if (++elements > MOST_ELEMENTS) {
            throw new Refused("cutfiles.file.too_many_things", found.name(), MOST_ELEMENTS);
        }
        if (++depth > DEEPEST) {
            throw new Refused("cutfiles.file.too_deep", found.name(), DEEPEST);
        }
        found.limit().steps(1 + given.getLength());
        if (open == null) {
            withoutNamespace = space.isEmpty(); // hardly SVG, but many write it by hand
        }
        boolean drawn = space.equals(SVG) || space.isEmpty() && withoutNamespace;
        String name = drawn ? local : space + " " + local;
        SvgNode node = new SvgNode(name, open, kept(given));
        if (open == null) {
            root = node;
        } else {
            open.children.add(node);
        }
        open = node;
        if (node.has("id")) {
            byId.putIfAbsent(node.attribute("id"), node);
        }
        switch (name) {
            case "style" -> sheets.add(node);
            case "script" -> found.count(Remark.Kind.UNSURE, "cutfiles.svg.script");
            case "link" -> found.count(Remark.Kind.UNSURE, "cutfiles.svg.outside");
            case "animate", "animateTransform", "animateMotion", "set", "discard" ->
                found.count(Remark.Kind.UNSURE, "cutfiles.svg.moves");
            default -> {
                // everything else waits until it is drawn
            }
        }
    }

    private static String[] kept(Attributes given) {
        List<String> kept = new ArrayList<>(given.getLength() * 2);
        for (int i = 0; i < given.getLength(); i++) {
            String space = given.getURI(i);
            String local = given.getLocalName(i);
            // SVG 2: a plain href comes before one of XLink's
            boolean old = space.equals(XLINK) && local.equals("href") && given.getIndex("", "href") < 0;
            if (space.isEmpty() || old) {
                kept.add(local.intern());
                kept.add(given.getValue(i));
            }
        }
        return kept.toArray(String[]::new);
    }

    @Override
    public void characters(char[] text, int start, int length) {
        if (open == null) {
            return;
        }
        if (open.name.equals("style")) {
            open.text.append(text, start, length);
        }
        for (int i = start; i < start + length; i++) {
            open.letters += text[i] > ' ' ? 1 : 0;
        }
    }

    @Override
    public void endElement(String space, String local, String qualified) {
        open = open.parent;
        depth--;
    }
}
