package puzzleworkshop.support.hostile;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Random;

/** SVG and DXF files that ask for endless lines, go in circles, or hold numbers no one can draw. */
public final class HostileCutFiles {

    private static final String SVG =
            "<svg xmlns='http://www.w3.org/2000/svg' xmlns:xlink='http://www.w3.org/1999/xlink'"
                    + " width='100mm' height='100mm' viewBox='0 0 100 100'>";

    private HostileCutFiles() {}

    public static Map<String, byte[]> all(long seed) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        addSvgs(files);
        addDxfs(files);
        addDamaged(files, seed);
        return files;
    }

    private static void svg(Map<String, byte[]> files, String name, String body) {
        files.put(name + ".svg", bytes(SVG + body + "</svg>"));
    }

    private static void addSvgs(Map<String, byte[]> files) {
        svg(
                files,
                "use-20000-children-100000-times",
                "<defs><g id='a'>" + "<path d='M0 0L1 1'/>".repeat(20_000) + "</g></defs>"
                        + "<use href='#a'/>".repeat(100_000));
        svg(files, "use-doubling-40", doubling(40));
        svg(
                files,
                "use-doubling-15-of-100-lines",
                doubling(15).replace("<path d='M0 0L9 9'/>", "<path d='M0 0L9 9'/>".repeat(100)));
        svg(files, "use-in-itself", "<g id='a'><use href='#a'/><path d='M0 0L1 1'/></g><use xlink:href='#a'/>");
        svg(files, "use-in-a-circle", "<g id='a'><use href='#b'/></g><g id='b'><use href='#a'/></g><use href='#a'/>");
        svg(files, "groups-100000-deep", "<g>".repeat(100_000) + "<path d='M0 0L1 1'/>" + "</g>".repeat(100_000));
        svg(
                files,
                "transforms-deep",
                "<g transform='scale(10)'>".repeat(2_000) + "<path d='M0 0L1 1'/>" + "</g>".repeat(2_000));
        svg(files, "number-of-two-million-digits", "<path d='M0 0L" + "9".repeat(2_000_000) + " 1'/>");
        svg(files, "width-of-two-million-digits", "<rect width='" + "1".repeat(2_000_000) + "' height='5'/>");
        svg(files, "fraction-of-two-million-digits", "<rect width='0." + "0".repeat(2_000_000) + "1mm' height='5'/>");
        svg(files, "coordinates-1e308", "<path d='M0 0L1e308 1e308C1e308 -1e308 -1e308 1e308 1e308 1e308'/>");
        svg(files, "coordinates-1e400", "<path d='M0 0L1e400 -1e400Z'/><circle r='1e400'/><line x2='1e999'/>");
        svg(
                files,
                "coordinates-not-a-number",
                "<path d='M NaN NaN L Infinity 1'/><rect width='NaN' height='Infinity'/>");
        svg(
                files,
                "scale-1e300",
                "<g transform='scale(1e300)'><g transform='scale(1e300)'><path d='M0 0L1 1C1 2 3 4 5 6'/></g></g>");
        svg(files, "scale-0", "<g transform='scale(0)'><circle r='5'/></g>");
        svg(
                files,
                "matrix-singular",
                "<g transform='matrix(1 1 1 1 0 0)'><circle r='5'/><path d='M0 0C1 2 3 4 5 6'/></g>");
        svg(
                files,
                "transform-list-long",
                "<g transform='" + "rotate(1) ".repeat(300_000) + "'><path d='M0 0L1 1'/></g>");
        svg(files, "transform-brackets", "<g transform='" + "rotate(".repeat(300_000) + "'><path d='M0 0L1 1'/></g>");
        svg(files, "circle-1e9", "<circle cx='0' cy='0' r='1e9'/>".repeat(2000));
        svg(files, "ellipse-thin", "<ellipse rx='1e12' ry='1e-12'/>".repeat(2000));
        svg(files, "arcs-huge", "<path d='M0 0" + "A1e9 1e9 0 1 1 1 1".repeat(50_000) + "'/>");
        svg(files, "arcs-tiny-radius", "<path d='M0 0" + "A1e-300 1e-300 0 1 1 9 9".repeat(50_000) + "'/>");
        svg(files, "curves-400000", "<path d='M0 0" + "C1 2 3 4 5 6".repeat(400_000) + "'/>");
        svg(files, "lines-1000000", "<path d='M0 0" + "l1 1".repeat(1_000_000) + "'/>");
        svg(files, "lines-on-one-another-300000", "<path d='" + "M0 0L90 90".repeat(300_000) + "'/>");
        svg(files, "crossings-2000-by-2000", crossing(2_000));
        svg(files, "crossings-60000-random", random(60_000));
        svg(files, "polyline-1000000", "<polyline points='" + "1,2 ".repeat(1_000_000) + "'/>");
        svg(files, "paths-200000", "<path d='M0 0L1 1'/>".repeat(200_000));
        svg(files, "path-letters", "<path d='" + "MmLlHhVvCcSsQqTtAaZz".repeat(100_000) + "'/>");
        svg(files, "path-of-commas", "<path d='M0 0" + ",".repeat(3_000_000) + "'/>");
        svg(files, "path-exponents", "<path d='M0 0L1e99999999999 1e-99999999999'/>");
        svg(
                files,
                "style-rules-20000",
                "<style>" + "path{stroke:red}".repeat(20_000) + "</style>" + "<path d='M0 0L1 1'/>".repeat(5_000));
        svg(
                files,
                "style-selectors-long",
                "<style>" + "g ".repeat(20_000) + "path{stroke:red}</style>" + "<g>".repeat(1_000)
                        + "<path d='M0 0L1 1'/>".repeat(500) + "</g>".repeat(1_000));
        svg(files, "style-brackets", "<style>" + "{".repeat(1_000_000) + "</style><path d='M0 0L1 1'/>");
        svg(files, "style-remark-open", "<style>/*" + "*".repeat(1_000_000) + "</style><path d='M0 0L1 1'/>");
        svg(files, "style-import", "<style>@import url('http://127.0.0.1:9/a.css');</style><path d='M0 0L1 1'/>");
        svg(files, "dashes-without-end", "<path stroke-dasharray='1e-9' stroke='red' d='M0 0L1e6 1e6'/>".repeat(100));
        svg(files, "attributes-50000", "<path d='M0 0L1 1' " + attributes(50_000) + "/>");
        svg(
                files,
                "picture-from-outside",
                "<image href='http://127.0.0.1:9/a.png' width='9' height='9'/><image href='file:///etc/passwd' width='9' height='9'/>");
        svg(
                files,
                "pattern-in-itself",
                "<pattern id='p' href='#p' width='1' height='1'><rect fill='url(#p)' width='9' height='9'/></pattern><rect fill='url(#p)' width='99' height='99'/>");
        svg(
                files,
                "clip-in-itself",
                "<clipPath id='c' clip-path='url(#c)'><rect width='9' height='9'/></clipPath><rect clip-path='url(#c)' width='99' height='99'/>");
        svg(
                files,
                "mask-in-itself",
                "<mask id='m' mask='url(#m)'><rect width='9' height='9'/></mask><rect mask='url(#m)' width='99' height='99'/>");
        svg(
                files,
                "marker-in-itself",
                "<marker id='m'><path marker-mid='url(#m)' d='M0 0L1 1L2 2'/></marker><path marker-mid='url(#m)' d='M0 0"
                        + "L1 1".repeat(9999) + "'/>");
        svg(files, "text-million", "<text font-size='1e6'>" + "W".repeat(1_000_000) + "</text>");
        svg(files, "svg-in-svg-5000", SVG.repeat(5_000) + "<path d='M0 0L1 1'/>" + "</svg>".repeat(5_000));
        svg(
                files,
                "script-and-animation",
                "<script>while(1);</script><animate attributeName='x' repeatCount='indefinite'/><path d='M0 0L1 1'/>");
        files.put(
                "laughs.svg",
                bytes("<!DOCTYPE svg [<!ENTITY a 'ha'>" + laughs() + "]>" + SVG + "<text>&l20;</text></svg>"));
        files.put(
                "entity-from-file.svg",
                bytes("<!DOCTYPE svg [<!ENTITY x SYSTEM 'file:///etc/passwd'>]>" + SVG + "<text>&x;</text></svg>"));
        files.put(
                "definition-from-outside.svg",
                bytes("<!DOCTYPE svg SYSTEM 'http://127.0.0.1:9/a.dtd'>" + SVG + "<path d='M0 0L1 1'/></svg>"));
        files.put("view-box-0.svg", bytes(SVG.replace("0 0 100 100", "0 0 0 0") + "<path d='M0 0L1 1'/></svg>"));
        files.put(
                "view-box-1e-308.svg",
                bytes(SVG.replace("0 0 100 100", "0 0 1e-308 1e-308") + "<path d='M0 0L1 1'/></svg>"));
        files.put("view-box-of-words.svg", bytes(SVG.replace("0 0 100 100", "a b c d") + "<path d='M0 0L1 1'/></svg>"));
        files.put("size-1e300.svg", bytes(SVG.replace("100mm", "1e300mm") + "<path d='M0 0L1 1'/></svg>"));
        files.put(
                "packed.svg",
                new Bytes()
                        .put(0x1F, 0x8B, 8, 0)
                        .put(Bytes.deflatedZeros(500_000_000))
                        .made());
        files.put("utf-16.svg", (SVG + "<path d='M0 0L1 1'/></svg>").getBytes(StandardCharsets.UTF_16));
        files.put("utf-7.svg", bytes("<?xml version='1.0' encoding='UTF-7'?>" + SVG + "</svg>"));
        files.put("nothing.svg", new byte[0]);
        files.put("zeros.svg", new byte[1_000_000]);
    }

    private static void dxf(Map<String, byte[]> files, String name, String blocks, String entities) {
        files.put(
                name + ".dxf",
                bytes(rows("0 SECTION 2 HEADER 9 $INSUNITS 70 4 0 ENDSEC 0 SECTION 2 BLOCKS " + blocks
                        + " 0 ENDSEC 0 SECTION 2 ENTITIES " + entities + " 0 ENDSEC 0 EOF")));
    }

    private static void addDxfs(Map<String, byte[]> files) {
        String block = "0 BLOCK 2 A 10 0 20 0 0 LINE 8 0 10 0 20 0 11 1 21 1 0 ENDBLK";
        dxf(files, "insert-65536-by-65536", block, "0 INSERT 2 A 10 0 20 0 70 65536 71 65536 44 1 45 1");
        dxf(files, "insert-32767-by-32767", block, "0 INSERT 2 A 10 0 20 0 70 32767 71 32767 44 1 45 1");
        dxf(files, "insert-2147483647", block, "0 INSERT 2 A 10 0 20 0 70 2147483647 71 2147483647");
        dxf(files, "insert-negative", block, "0 INSERT 2 A 10 0 20 0 70 -5 71 -2147483648");
        dxf(files, "insert-in-itself", "0 BLOCK 2 A 0 INSERT 2 A 0 LINE 10 0 20 0 11 1 21 1 0 ENDBLK", "0 INSERT 2 A");
        dxf(files, "insert-doubling", doublingBlocks(40), "0 INSERT 2 B0 10 0 20 0");
        dxf(files, "insert-ten-times-ten", tens(8), "0 INSERT 2 B0 10 0 20 0");
        dxf(files, "insert-scale-1e300", block, "0 INSERT 2 A 41 1e300 42 1e300 43 1 10 1e300 20 -1e300");
        dxf(files, "insert-scale-0", block, "0 INSERT 2 A 41 0 42 0");
        dxf(files, "line-1e308", "", "0 LINE 8 0 10 -1e308 20 -1e308 11 1e308 21 1e308");
        dxf(files, "circle-1e308", "", "0 CIRCLE 8 0 10 0 20 0 40 1e308");
        dxf(files, "circle-negative", "", "0 CIRCLE 8 0 10 0 20 0 40 -5");
        dxf(files, "arc-1e308-degrees", "", "0 ARC 8 0 10 0 20 0 40 5 50 -1e308 51 1e308");
        dxf(files, "not-a-number", "", "0 LINE 8 0 10 NaN 20 Infinity 11 abc 21 1e");
        dxf(files, "ellipse-thin", "", "0 ELLIPSE 8 0 10 0 20 0 11 1e12 21 0 40 1e-300 41 0 42 1e300");
        dxf(files, "polyline-3000000", "", "0 LWPOLYLINE 8 0 90 3000000 70 0 10 1 20 2".repeat(200_000));
        dxf(
                files,
                "polyline-of-1000000-points",
                "",
                "0 LWPOLYLINE 8 0 90 1000000 70 0 " + "10 1 20 2 ".repeat(400_000));
        dxf(files, "bulge-1e308", "", "0 LWPOLYLINE 8 0 90 2 70 1 10 0 20 0 42 1e308 10 5 20 5 42 -1e-308");
        dxf(
                files,
                "spline-degree-1000",
                "",
                "0 SPLINE 8 0 70 8 71 1000 72 2002 73 1001 " + knots(2002) + control(1001));
        dxf(
                files,
                "spline-degree-2147483647",
                "",
                "0 SPLINE 8 0 70 8 71 2147483647 72 5 73 4 " + knots(5) + control(4));
        dxf(
                files,
                "spline-100000-points",
                "",
                "0 SPLINE 8 0 70 8 71 3 72 100004 73 100000 " + knots(100_004) + control(100_000));
        dxf(
                files,
                "spline-knots-wrong",
                "",
                "0 SPLINE 8 0 70 8 71 3 72 9 73 4 40 5 40 5 40 NaN 40 1 40 -1 " + control(4));
        dxf(
                files,
                "spline-knots-all-the-same",
                "",
                "0 SPLINE 8 0 70 8 71 3 72 8 73 4 " + "40 1 ".repeat(8) + control(4));
        dxf(
                files,
                "spline-weights-0",
                "",
                "0 SPLINE 8 0 70 12 71 3 72 8 73 4 " + knots(8) + "41 0 ".repeat(4) + control(4));
        dxf(
                files,
                "spline-through-50000-points",
                "",
                "0 SPLINE 8 0 70 8 71 3 74 50000 " + "11 1 21 2 31 0 ".repeat(50_000));
        dxf(files, "lines-300000", "", "0 LINE 8 0 10 0 20 0 11 9 21 9 ".repeat(300_000));
        dxf(files, "circles-100000", "", "0 CIRCLE 8 0 10 0 20 0 40 1e6 ".repeat(100_000));
        dxf(files, "hatch-1000000", "", "0 HATCH 8 0 91 1000000 92 1 93 1000000 72 1 10 0 20 0 11 1 21 1");
        dxf(files, "text-million", "", "0 TEXT 8 0 10 0 20 0 40 5 1 " + "W".repeat(1_000_000));
        dxf(files, "layers-100000", "", "");
        files.put(
                "layers-100000.dxf",
                bytes(rows("0 SECTION 2 TABLES 0 TABLE 2 LAYER " + "0 LAYER 2 x 70 1 62 -7 ".repeat(100_000)
                        + "0 ENDTAB 0 ENDSEC 0 SECTION 2 ENTITIES 0 LINE 8 x 10 0 20 0 11 1 21 1 0 ENDSEC 0 EOF")));
        files.put(
                "row-of-two-million-digits.dxf",
                bytes("0\nSECTION\n2\nENTITIES\n0\nLINE\n10\n" + "9".repeat(2_000_000)
                        + "\n20\n1\n11\n2\n21\n3\n0\nENDSEC\n0\nEOF\n"));
        files.put(
                "code-of-two-million-digits.dxf",
                bytes("0\nSECTION\n2\nENTITIES\n0\nLINE\n" + "1".repeat(2_000_000) + "\n5\n0\nENDSEC\n0\nEOF\n"));
        files.put("odd-number-of-rows.dxf", bytes("0\nSECTION\n2\nENTITIES\n0\nLINE\n10\n"));
        files.put("rows-without-end-mark.dxf", bytes("0\nSECTION\n2\nENTITIES\n" + "0\nLINE\n8\n0\n".repeat(100_000)));
        files.put("empty-rows.dxf", bytes("\n".repeat(4_000_000)));
        files.put(
                "binary.dxf",
                new Bytes()
                        .text("AutoCAD Binary DXF\r\n")
                        .put(0x1A, 0)
                        .put(new byte[100_000])
                        .made());
        files.put("section-in-section.dxf", bytes("0\nSECTION\n2\nBLOCKS\n".repeat(100_000)));
        files.put(
                "units-999.dxf",
                bytes(
                        rows(
                                "0 SECTION 2 HEADER 9 $INSUNITS 70 999 0 ENDSEC 0 SECTION 2 ENTITIES 0 LINE 10 0 20 0 11 5 21 5 0 ENDSEC 0 EOF")));
        files.put("nothing.dxf", new byte[0]);
        files.put("zeros.dxf", new byte[1_000_000]);
        files.put("svg-called.dxf", bytes(SVG + "<path d='M0 0L1 1'/></svg>"));
        files.put("dxf-called.svg", bytes(rows("0 SECTION 2 ENTITIES 0 LINE 10 0 20 0 11 5 21 5 0 ENDSEC 0 EOF")));
    }

    private static void addDamaged(Map<String, byte[]> files, long seed) {
        byte[] svg = bytes(
                SVG
                        + "<style>.a{stroke:red}</style><g transform='rotate(5)'><path class='a' d='M1 1C2 3 4 5 6 7A5 5 0 1 0 9 9Z'/>"
                        + "<rect x='1' y='2' width='30' height='20' rx='3'/><use href='#c'/></g><circle id='c' cx='50' cy='50' r='9'/></svg>");
        byte[] dxf = bytes(
                rows("0 SECTION 2 BLOCKS 0 BLOCK 2 A 0 CIRCLE 10 1 20 1 40 5 0 ENDBLK 0 ENDSEC 0 SECTION 2 ENTITIES"
                        + " 0 LINE 8 0 10 0 20 0 11 50 21 50 0 ARC 10 5 20 5 40 3 50 10 51 90 0 INSERT 2 A 10 5 20 5 70 2 71 3 44 9 45 9"
                        + " 0 SPLINE 70 8 71 3 72 8 73 4 " + "40 0 40 0 40 0 40 0 40 1 40 1 40 1 40 1 " + control(4)
                        + "0 ENDSEC 0 EOF"));
        Random random = new Random(seed);
        for (int i = 0; i < 12; i++) {
            files.put("flipped-" + i + ".svg", Bytes.flipped(svg, random, 1 + random.nextInt(6)));
            files.put("flipped-" + i + ".dxf", Bytes.flipped(dxf, random, 1 + random.nextInt(10)));
        }
        for (int i = 1; i < 4; i++) {
            files.put("cut-" + i + ".svg", Bytes.cut(svg, i / 4.0));
            files.put("cut-" + i + ".dxf", Bytes.cut(dxf, i / 4.0));
        }
    }

    private static String doubling(int levels) {
        StringBuilder body = new StringBuilder("<defs><g id='g0'><path d='M0 0L9 9'/></g>");
        for (int i = 1; i <= levels; i++) {
            String use = "<use href='#g" + (i - 1) + "'/>";
            body.append("<g id='g")
                    .append(i)
                    .append("'>")
                    .append(use)
                    .append(use)
                    .append("</g>");
        }
        return body + "</defs><use href='#g" + levels + "'/>";
    }

    private static String laughs() {
        StringBuilder all = new StringBuilder("<!ENTITY l0 'ha'>");
        for (int i = 1; i <= 20; i++) {
            all.append("<!ENTITY l")
                    .append(i)
                    .append(" '")
                    .append(("&l" + (i - 1) + ";").repeat(10))
                    .append("'>");
        }
        return all.toString();
    }

    private static String attributes(int count) {
        StringBuilder all = new StringBuilder();
        for (int i = 0; i < count; i++) {
            all.append('a').append(i).append("='1' ");
        }
        return all.toString();
    }

    /** Lines across and down: each crosses all of the others. */
    private static String crossing(int lines) {
        StringBuilder all = new StringBuilder("<path d='");
        for (int i = 0; i < lines; i++) {
            double at = 100.0 * i / lines;
            all.append("M0 ").append(at).append("H100M").append(at).append(" 0V100");
        }
        return all + "'/>";
    }

    private static String random(int lines) {
        Random random = new Random(3);
        StringBuilder all = new StringBuilder("<path d='");
        for (int i = 0; i < lines; i++) {
            all.append("M").append(random.nextInt(100)).append(' ').append(random.nextInt(100));
            all.append("L").append(random.nextInt(100)).append(' ').append(random.nextInt(100));
        }
        return all + "'/>";
    }

    private static String doublingBlocks(int levels) {
        StringBuilder blocks = new StringBuilder();
        for (int i = 0; i < levels; i++) {
            blocks.append("0 BLOCK 2 B").append(i).append(" 10 0 20 0 ");
            blocks.append(("0 INSERT 2 B" + (i + 1) + " 10 0 20 0 ").repeat(2)).append("0 ENDBLK ");
        }
        return blocks + "0 BLOCK 2 B" + levels + " 0 LINE 10 0 20 0 11 1 21 1 0 ENDBLK";
    }

    private static String tens(int levels) {
        StringBuilder blocks = new StringBuilder();
        for (int i = 0; i < levels; i++) {
            blocks.append("0 BLOCK 2 B").append(i).append(" 0 INSERT 2 B").append(i + 1);
            blocks.append(" 70 10 71 10 44 1 45 1 0 ENDBLK ");
        }
        return blocks + "0 BLOCK 2 B" + levels + " 0 LINE 10 0 20 0 11 1 21 1 0 ENDBLK";
    }

    private static String knots(int count) {
        StringBuilder knots = new StringBuilder();
        for (int i = 0; i < count; i++) {
            knots.append("40 ").append(i).append(' ');
        }
        return knots.toString();
    }

    private static String control(int count) {
        StringBuilder control = new StringBuilder();
        for (int i = 0; i < count; i++) {
            control.append("10 ").append(i).append(" 20 ").append(i % 7).append(" 30 0 ");
        }
        return control.toString();
    }

    /** Words to rows, as DXF has them: a code, then its value. */
    private static String rows(String words) {
        return words.strip().replaceAll(" +", "\n") + "\n";
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
