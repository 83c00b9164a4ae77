package puzzleworkshop.cutfiles.reading;

import java.awt.geom.AffineTransform;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringReader;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.parser.AWTTransformProducer;
import org.apache.batik.parser.ParseException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;

/**
 * Reads the lines of an SVG file in real millimetres: page size and view box (SVG 2, chapter 8), transforms, shapes,
 * references. Grammar of paths and transforms by Batik. Nothing outside the file is ever fetched: external entities
 * and document types are not loaded, entity expansion is limited by the parser's secure mode.
 */
final class SvgReading {

    private static final Set<String> GROUPS = Set.of("g", "a", "switch");
    private static final Set<String> SHAPES =
            Set.of("path", "rect", "circle", "ellipse", "line", "polyline", "polygon");
    private static final Set<String> NEVER_DRAWN = Set.of(
            "defs",
            "symbol",
            "clipPath",
            "mask",
            "pattern",
            "marker",
            "linearGradient",
            "radialGradient",
            "filter",
            "title",
            "desc",
            "metadata",
            "style",
            "script",
            "namedview");
    private static final int DEEPEST = 64;

    private final LineCollector found;
    private final SvgLengths lengths;
    private final Map<String, Element> byId = new HashMap<>();
    private int uses;

    private SvgReading(String name, double pxPerInch) {
        this.found = new LineCollector(name);
        this.lengths = new SvgLengths(pxPerInch);
    }

    static DrawnFile read(String name, byte[] bytes, double pxPerInch) {
        Element root = parse(name, bytes).getDocumentElement();
        if (!local(root).equals("svg")) {
            throw new Refused("pattern.file.no_svg", name);
        }
        try {
            return new SvgReading(name, pxPerInch).drawn(name, root);
        } catch (IllegalArgumentException wrong) {
            throw new Refused("pattern.file.damaged", name, String.valueOf(wrong.getMessage()));
        }
    }

    private DrawnFile drawn(String name, Element root) {
        collectIds(root, 0);
        SvgLengths.Viewport page = lengths.viewport(root, null);
        if (!page.stated()) {
            found.remark(Sentence.of("pattern.file.no_real_size", lengths.pxPerInch()));
        }
        AffineTransform toMm = AffineTransform.getScaleInstance(lengths.mmPerPx(), lengths.mmPerPx());
        toMm.concatenate(page.contents());
        children(root, toMm, 0);
        Optional<Size> size = page.width() > 0 && page.height() > 0
                ? Optional.of(Size.mm(page.width() * lengths.mmPerPx(), page.height() * lengths.mmPerPx()))
                : Optional.empty();
        return new DrawnFile(name, DrawnFile.Kind.SVG, found.lines(), size, found.remarks());
    }

    private void children(Element parent, AffineTransform toMm, int depth) {
        for (Node node = parent.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node instanceof Element element) {
                element(element, toMm, depth + 1);
            }
        }
    }

    private void element(Element element, AffineTransform outer, int depth) {
        String kind = local(element);
        if (NEVER_DRAWN.contains(kind) || hidden(element)) {
            return;
        }
        if (depth > DEEPEST) {
            found.passOver(kind);
            return;
        }
        AffineTransform toMm = new AffineTransform(outer);
        try {
            if (element.hasAttribute("transform")) {
                toMm.concatenate(AWTTransformProducer.createAffineTransform(
                        new StringReader(element.getAttribute("transform"))));
            }
            if (SHAPES.contains(kind)) {
                found.add(SvgShapes.of(element, kind, lengths), toMm);
            } else if (GROUPS.contains(kind)) {
                children(element, toMm, depth);
            } else if (kind.equals("svg")) {
                toMm.translate(lengths.px(element, "x", 0), lengths.px(element, "y", 0));
                toMm.concatenate(lengths.viewport(element, null).contents());
                children(element, toMm, depth);
            } else if (kind.equals("use")) {
                use(element, toMm, depth);
            } else {
                found.passOver(kind);
            }
        } catch (ParseException | IllegalArgumentException unreadable) {
            found.unreadable();
        }
    }

    private void use(Element use, AffineTransform toMm, int depth) {
        String reference = use.hasAttribute("href")
                ? use.getAttribute("href")
                : use.getAttributeNS("http://www.w3.org/1999/xlink", "href");
        Element target = reference.startsWith("#") ? byId.get(reference.substring(1)) : null;
        if (target == null || ++uses > DrawnFile.MOST_LINES) {
            found.passOver("use");
            return;
        }
        toMm.translate(lengths.px(use, "x", 0), lengths.px(use, "y", 0));
        if (local(target).equals("symbol")) {
            toMm.concatenate(lengths.viewport(target, use).contents());
            children(target, toMm, depth);
        } else {
            element(target, toMm, depth + 1);
        }
    }

    private static boolean hidden(Element element) {
        String style = element.getAttribute("style").replace(" ", "");
        return element.getAttribute("display").equals("none")
                || style.contains("display:none")
                || element.getAttribute("visibility").equals("hidden")
                || style.contains("visibility:hidden");
    }

    private void collectIds(Element element, int depth) {
        if (element.hasAttribute("id")) {
            byId.putIfAbsent(element.getAttribute("id"), element);
        }
        for (Node node = element.getFirstChild(); node != null && depth < DEEPEST * 2; node = node.getNextSibling()) {
            if (node instanceof Element child) {
                collectIds(child, depth + 1);
            }
        }
    }

    private static String local(Element element) {
        return element.getLocalName() == null ? element.getTagName() : element.getLocalName();
    }

    private static Document parse(String name, byte[] bytes) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setNamespaceAware(true);
            factory.setXIncludeAware(false);
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            factory.setFeature("http://xml.org/sax/features/external-general-entities", false);
            factory.setFeature("http://xml.org/sax/features/external-parameter-entities", false);
            factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
            factory.setAttribute(XMLConstants.ACCESS_EXTERNAL_DTD, "");
            factory.setAttribute(XMLConstants.ACCESS_EXTERNAL_SCHEMA, "");
            DocumentBuilder builder = factory.newDocumentBuilder();
            builder.setErrorHandler(null);
            builder.setEntityResolver((publicId, systemId) -> new InputSource(new StringReader("")));
            return builder.parse(new ByteArrayInputStream(bytes));
        } catch (SAXException | IOException damaged) {
            throw new Refused("pattern.file.damaged", name, String.valueOf(damaged.getMessage()));
        } catch (ParserConfigurationException missing) {
            throw new IllegalStateException("The XML parser does not know a safety setting", missing);
        }
    }
}
