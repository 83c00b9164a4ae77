package puzzleworkshop.support.hostile;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** PDFs (ISO 32000-1) whose page never ends, goes in circles or unpacks without end. */
final class HostilePdfs {

    private static final String PAGE =
            "<</Type/Page/Parent 2 0 R/MediaBox[0 0 600 400]/Contents 4 0 R/Resources 5 0 R>>";

    private HostilePdfs() {}

    static void addTo(Map<String, byte[]> files, long seed) {
        files.put("page-tree-loop.pdf", document("<</Type/Pages/Count 3/Kids[2 0 R 2 0 R]>>", PAGE, "", "<<>>"));
        files.put("page-tree-60000-deep.pdf", deepTree(60_000));
        files.put("arrays-300000-nested.pdf", document(pages(), PAGE, "", "[".repeat(300_000)));
        files.put("dictionaries-100000-nested.pdf", document(pages(), PAGE, "", "<</A ".repeat(100_000)));
        files.put("content-arrays-nested.pdf", document(pages(), PAGE, "[".repeat(400_000), "<<>>"));
        files.put("saves-2000000.pdf", document(pages(), PAGE, "q ".repeat(2_000_000), "<<>>"));
        files.put(
                "form-in-itself.pdf",
                document(
                        pages(),
                        PAGE,
                        "/F Do",
                        "<</XObject<</F 6 0 R>>>>",
                        form("/F Do /F Do", "/XObject<</F 6 0 R>>", "")));
        files.put("forms-doubling-40.pdf", doubling(40, ""));
        files.put("forms-doubling-16-transparent.pdf", doubling(16, "/Group<</S/Transparency/I true>>"));
        files.put(
                "groups-3000.pdf",
                document(
                        pages(),
                        PAGE,
                        "/F Do ".repeat(3000),
                        "<</XObject<</F 6 0 R>>>>",
                        form("0 0 600 400 re f", "", "/Group<</S/Transparency/I true/K true>>")));
        files.put("groups-nested-30.pdf", nestedGroups(30));
        files.put(
                "pattern-in-itself.pdf",
                document(
                        pages(),
                        PAGE,
                        "/Pattern cs /P scn 0 0 600 400 re f",
                        "<</Pattern<</P 6 0 R>>>>",
                        stream(
                                "<</Type/Pattern/PatternType 1/PaintType 1/TilingType 1/BBox[0 0 1 1]/XStep 1/YStep 1"
                                        + "/Resources<</Pattern<</P 6 0 R>>>>",
                                "/Pattern cs /P scn 0 0 1 1 re f")));
        files.put(
                "pattern-of-tiny-tiles.pdf",
                document(
                        pages(),
                        PAGE,
                        "/Pattern cs /P scn 0 0 600 400 re f",
                        "<</Pattern<</P 6 0 R>>>>",
                        stream(
                                "<</Type/Pattern/PatternType 1/PaintType 1/TilingType 1/BBox[0 0 1000000 1000000]"
                                        + "/XStep 0.0001/YStep 0.0001/Resources<<>>",
                                "0 0 1 1 re f")));
        files.put(
                "dashes-without-end.pdf",
                document(pages(), PAGE, "[0.00001 0.00001] 0 d 1 w 0 0 m 1000000 1000000 l S ".repeat(50), "<<>>"));
        files.put(
                "numbers-1e308.pdf",
                document(
                        pages(),
                        PAGE,
                        ("9".repeat(308) + " 0 0 " + "9".repeat(308) + " 0 0 cm 0 0 m 1 1 l S ").repeat(5),
                        "<<>>"));
        files.put("box-1e30.pdf", document(pages(), PAGE.replace("600 400", "1" + "0".repeat(30) + " 1"), "", "<<>>"));
        files.put("box-tiny.pdf", document(pages(), PAGE.replace("600 400", "0.0001 0.0001"), "", "<<>>"));
        files.put("box-nothing.pdf", document(pages(), PAGE.replace("[0 0 600 400]", "[/A (b) null]"), "", "<<>>"));
        files.put(
                "page-14400.pdf",
                document(
                        pages(),
                        PAGE.replace("600 400", "14400 14400"),
                        "/F Do ".repeat(300),
                        "<</XObject<</F 6 0 R>>>>",
                        form("0 0 14400 14400 re f", "", "/Group<</S/Transparency>>")
                                .replace("600 400", "14400 14400")));
        files.put("curves-1000000.pdf", document(pages(), PAGE, curves(300_000), "<<>>"));
        files.put("clips-5000.pdf", document(pages(), PAGE, clips(5_000), "<<>>"));
        files.put(
                "picture-100000.pdf",
                picture("/Width 100000/Height 100000/Filter/FlateDecode", Bytes.deflatedZeros(50_000_000)));
        files.put(
                "picture-14000-flate-bomb.pdf",
                picture("/Width 14000/Height 14000/Filter/FlateDecode", Bytes.deflatedZeros(588_000_000)));
        files.put(
                "picture-flate-of-flate.pdf",
                picture(
                        "/Width 14000/Height 14000/Filter[/FlateDecode/FlateDecode/FlateDecode]",
                        Bytes.deflatedZeros(500_000_000)));
        files.put("picture-jbig2.pdf", picture("/Width 20000/Height 20000/Filter/JBIG2Decode", noise(5000, seed)));
        files.put("picture-jpx.pdf", picture("/Width 20000/Height 20000/Filter/JPXDecode", noise(5000, seed)));
        files.put(
                "picture-fax.pdf",
                picture(
                        "/Width 30000/Height 30000/Filter/CCITTFaxDecode/DecodeParms<</K -1/Columns 30000/Rows 30000>>",
                        new byte[5000]));
        files.put("picture-lzw.pdf", picture("/Width 14000/Height 14000/Filter/LZWDecode", noise(500_000, seed)));
        files.put(
                "picture-run-lengths.pdf",
                picture("/Width 14000/Height 14000/Filter/RunLengthDecode", Bytes.same(0x81, 4_000_000)));
        files.put("picture-progressive-jpeg.pdf", progressive(seed));
        files.put("content-bomb.pdf", contentBomb());
        files.put(
                "mask-in-itself.pdf",
                document(
                        pages(),
                        PAGE,
                        "/G gs 0 0 600 400 re f",
                        "<</ExtGState<</G 7 0 R>>>>",
                        form("/G gs 0 0 600 400 re f", "/ExtGState<</G 7 0 R>>", "/Group<</S/Transparency>>"),
                        "<</SMask<</S/Luminosity/G 6 0 R>>>>"));
        files.put(
                "function-of-2147483647.pdf",
                document(
                        pages(),
                        PAGE,
                        "/S sh",
                        "<</Shading<</S<</ShadingType 1/ColorSpace/DeviceRGB/Function 6 0 R>>>>>>",
                        stream(
                                "<</FunctionType 0/Domain[0 1 0 1]/Range[0 1 0 1 0 1]/Size[2147483647 2147483647]/BitsPerSample 8",
                                "x")));
        files.put(
                "function-in-itself.pdf",
                document(
                        pages(),
                        PAGE,
                        "/S sh",
                        "<</Shading<</S<</ShadingType 2/Coords[0 0 600 0]/ColorSpace/DeviceRGB/Function 6 0 R>>>>>>",
                        "<</FunctionType 3/Domain[0 1]/Functions[6 0 R 6 0 R]/Bounds[0.5]/Encode[0 1 0 1]>>"));
        files.put(
                "colours-in-itself.pdf",
                document(
                        pages(),
                        PAGE,
                        "/C cs 0 sc 0 0 600 400 re f",
                        "<</ColorSpace<</C 6 0 R>>>>",
                        "[/Indexed 6 0 R 255 (abc)]"));
        files.put(
                "font-in-itself.pdf",
                document(
                        pages(),
                        PAGE,
                        "BT /T 20 Tf 10 10 Td (aaaaaaaaaaaaaaaaaaaaaaaaaaaaaa) Tj ET",
                        "<</Font<</T 6 0 R>>>>",
                        "<</Type/Font/Subtype/Type3/FontBBox[0 0 1 1]/FontMatrix[1 0 0 1 0 0]/CharProcs<</a 7 0 R>>"
                                + "/Encoding<</Type/Encoding/Differences[97/a]>>/FirstChar 97/LastChar 97/Widths[1]"
                                + "/Resources<</Font<</T 6 0 R>>>>>>",
                        stream("<<", "BT /T 1 Tf (aaaaaaaaaa) Tj ET")));
        files.put(
                "letters-1000000.pdf",
                document(
                        pages(),
                        PAGE,
                        "BT /T 4 Tf 10 10 Td " + "(The quick brown fox jumps over the lazy dog) Tj ".repeat(40_000)
                                + "ET",
                        "<</Font<</T<</Type/Font/Subtype/Type1/BaseFont/Helvetica>>>>>>"));
        files.put("cross-reference-loop.pdf", crossReferenceLoop());
        files.put(
                "length-negative.pdf",
                text(document(pages(), PAGE, "0 0 m", "<<>>"))
                        .replace("/Length 5", "/Length -9")
                        .getBytes(StandardCharsets.ISO_8859_1));
        files.put("numbers-without-end.pdf", document(pages(), PAGE.replace("600", "6".repeat(2_000_000)), "", "<<>>"));
        files.put("head-only.pdf", "%PDF-1.7\n".getBytes(StandardCharsets.ISO_8859_1));
        files.put(
                "zeros.pdf",
                new Bytes().text("%PDF-1.7\n").put(new byte[5_000_000]).made());
        files.put(
                "objects-of-noise.pdf",
                new Bytes()
                        .text("%PDF-1.7\n")
                        .text("1 0 obj\n<<\n".repeat(400_000))
                        .made());
        byte[] good = document(
                pages(),
                PAGE,
                "1 0 0 rg 10 10 300 200 re f BT /T 40 Tf 50 50 Td (Leaves) Tj ET",
                "<</Font<</T<</Type/Font/Subtype/Type1/BaseFont/Helvetica>>>>>>");
        Random random = new Random(seed);
        for (int i = 0; i < 12; i++) {
            files.put("flipped-" + i + ".pdf", Bytes.flipped(good, random, 1 + random.nextInt(12)));
        }
        for (int i = 1; i < 4; i++) {
            files.put("cut-" + i + ".pdf", Bytes.cut(good, i / 4.0));
        }
    }

    private static String pages() {
        return "<</Type/Pages/Count 1/Kids[3 0 R]>>";
    }

    private static String form(String content, String resources, String more) {
        return stream("<</Type/XObject/Subtype/Form/BBox[0 0 600 400]/Resources<<" + resources + ">>" + more, content);
    }

    private static String stream(String openDictionary, String content) {
        return openDictionary + "/Length " + content.length() + ">>stream\n" + content + "\nendstream";
    }

    /** Objects 1 catalogue, 2 pages, 3 page, 4 content, 5 resources, 6 and on as given. */
    private static byte[] document(String pages, String page, String content, String resources, String... more) {
        List<byte[]> objects = new ArrayList<>();
        for (String object :
                new String[] {"<</Type/Catalog/Pages 2 0 R>>", pages, page, stream("<<", content), resources}) {
            objects.add(object.getBytes(StandardCharsets.ISO_8859_1));
        }
        for (String object : more) {
            objects.add(object.getBytes(StandardCharsets.ISO_8859_1));
        }
        return document(objects);
    }

    private static byte[] document(List<byte[]> objects) {
        Bytes pdf = new Bytes().text("%PDF-1.7\n");
        List<Integer> places = new ArrayList<>();
        for (int i = 0; i < objects.size(); i++) {
            places.add(pdf.size());
            pdf.text((i + 1) + " 0 obj\n").put(objects.get(i)).text("\nendobj\n");
        }
        int table = pdf.size();
        pdf.text("xref\n0 " + (objects.size() + 1) + "\n0000000000 65535 f \n");
        for (int place : places) {
            pdf.text(String.format(java.util.Locale.ROOT, "%010d 00000 n \n", place));
        }
        return pdf.text("trailer\n<</Size " + (objects.size() + 1) + "/Root 1 0 R>>\nstartxref\n" + table + "\n%%EOF\n")
                .made();
    }

    private static String text(byte[] latin) {
        return new String(latin, StandardCharsets.ISO_8859_1);
    }

    private static byte[] deepTree(int depth) {
        List<byte[]> objects = new ArrayList<>();
        objects.add("<</Type/Catalog/Pages 2 0 R>>".getBytes(StandardCharsets.ISO_8859_1));
        for (int i = 0; i < depth; i++) {
            objects.add(("<</Type/Pages/Count 1/Kids[" + (i + 3) + " 0 R]>>").getBytes(StandardCharsets.ISO_8859_1));
        }
        objects.add("<</Type/Page/MediaBox[0 0 600 400]>>".getBytes(StandardCharsets.ISO_8859_1));
        return document(objects);
    }

    private static byte[] doubling(int levels, String more) {
        String[] forms = new String[levels];
        for (int i = 0; i < levels; i++) {
            forms[i] = i == levels - 1
                    ? form("0 0 600 400 re f", "", more)
                    : form("/F Do /F Do", "/XObject<</F " + (i + 7) + " 0 R>>", more);
        }
        return document(pages(), PAGE, "/F Do", "<</XObject<</F 6 0 R>>>>", forms);
    }

    private static byte[] nestedGroups(int levels) {
        String[] forms = new String[levels];
        for (int i = 0; i < levels; i++) {
            String group = "/Group<</S/Transparency/I true>>";
            forms[i] = i == levels - 1
                    ? form("0 0 600 400 re f", "", group)
                    : form("/F Do", "/XObject<</F " + (i + 7) + " 0 R>>", group);
        }
        return document(
                pages(),
                PAGE.replace("600 400", "2000 2000"),
                "4 0 0 5 0 0 cm /F Do",
                "<</XObject<</F 6 0 R>>>>",
                forms);
    }

    private static String curves(int count) {
        Random random = new Random(1);
        StringBuilder content = new StringBuilder("0 0 m ");
        for (int i = 0; i < count; i++) {
            for (int k = 0; k < 6; k++) {
                content.append(random.nextInt(600)).append(' ');
            }
            content.append("c ");
        }
        return content + "B*";
    }

    private static String clips(int count) {
        StringBuilder content = new StringBuilder();
        Random random = new Random(2);
        for (int i = 0; i < count; i++) {
            content.append("0 0 m ").append(random.nextInt(600)).append(" 400 ").append(random.nextInt(600));
            content.append(" 0 600 400 0 ").append(random.nextInt(400)).append(" c W n ");
        }
        return content + "0 0 600 400 re f";
    }

    private static byte[] picture(String facts, byte[] body) {
        List<byte[]> objects = new ArrayList<>();
        for (String object : new String[] {
            "<</Type/Catalog/Pages 2 0 R>>",
            pages(),
            PAGE,
            stream("<<", "q 600 0 0 400 0 0 cm /I Do Q"),
            "<</XObject<</I 6 0 R>>>>"
        }) {
            objects.add(object.getBytes(StandardCharsets.ISO_8859_1));
        }
        objects.add(new Bytes()
                .text("<</Type/XObject/Subtype/Image/ColorSpace/DeviceRGB/BitsPerComponent 8" + facts + "/Length "
                        + body.length + ">>stream\n")
                .put(body)
                .text("\nendstream")
                .made());
        return document(objects);
    }

    private static byte[] progressive(long seed) {
        Map<String, byte[]> jpegs = new java.util.LinkedHashMap<>();
        HostileJpegs.addTo(jpegs, seed);
        return picture("/Width 14000/Height 14000/Filter/DCTDecode", jpegs.get("scans-800-of-14000.jpg"));
    }

    private static byte[] contentBomb() {
        byte[] zeros = Bytes.deflatedZeros(1_500_000_000);
        List<byte[]> objects = new ArrayList<>();
        for (String object : new String[] {"<</Type/Catalog/Pages 2 0 R>>", pages(), PAGE}) {
            objects.add(object.getBytes(StandardCharsets.ISO_8859_1));
        }
        objects.add(new Bytes()
                .text("<</Filter/FlateDecode/Length " + zeros.length + ">>stream\n")
                .put(zeros)
                .text("\nendstream")
                .made());
        objects.add("<<>>".getBytes(StandardCharsets.ISO_8859_1));
        return document(objects);
    }

    private static byte[] crossReferenceLoop() {
        String start = text(document(pages(), PAGE, "", "<<>>"));
        int table = start.lastIndexOf("xref\n0 ");
        return start.replace("/Root 1 0 R>>", "/Root 1 0 R/Prev " + table + ">>")
                .getBytes(StandardCharsets.ISO_8859_1);
    }

    private static byte[] noise(int length, long seed) {
        byte[] noise = new byte[length];
        new Random(seed).nextBytes(noise);
        return noise;
    }
}
