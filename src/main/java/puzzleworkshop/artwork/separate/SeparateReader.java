package puzzleworkshop.artwork.separate;

import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import puzzleworkshop.artwork.pixels.ReadPicture;
import puzzleworkshop.artwork.pixels.UnpackedPixels;
import puzzleworkshop.artwork.reading.ImageHeader;
import puzzleworkshop.artwork.reading.IntakeLimits;
import puzzleworkshop.artwork.rows.DecodedRowSink;
import puzzleworkshop.artwork.rows.ImageProbe;
import puzzleworkshop.measure.Refused;

/**
 * Reads pictures in a process of its own (see {@link SeparateProcess}): everything whose reader cannot be stopped or takes
 * memory outside the heap. What may be read here, {@link #isNeeded} says.
 */
public final class SeparateReader {

    private static final Logger LOG = LoggerFactory.getLogger(SeparateReader.class);
    private static final Duration FOR_FONTS = Duration.ofSeconds(60);
    private static final int PNG_BITS = 24;
    private static final AtomicBoolean FONTS_KNOWN = new AtomicBoolean();

    private SeparateReader() {}

    /**
     * Whether a file must be read apart. Not: JPEGs of one scan in grey or RGB, and PNGs whose rows come in order with
     * eight bits a channel. Of both a row is read at a time, so that the work can be bounded row by row.
     */
    public static boolean isNeeded(Path file, IntakeLimits limits) throws IOException {
        byte[] head;
        try (var in = Files.newInputStream(file)) {
            head = in.readNBytes(32);
        }
        boolean png = head.length == 32 && head[0] == (byte) 0x89 && head[1] == 'P';
        if (png) {
            int bits = head[PNG_BITS];
            int kind = head[PNG_BITS + 1];
            int interlace = head[PNG_BITS + 4];
            return bits != 8 || kind == 3 || interlace != 0;
        }
        boolean jpeg = head.length > 2 && head[0] == (byte) 0xFF && head[1] == (byte) 0xD8;
        if (jpeg) {
            ImageHeader.JpegScan scan = ImageProbe.at(file, limits).scan().orElseThrow();
            return scan.several() || scan.components() == 4;
        }
        return true;
    }

    /** The same as {@link ImageProbe#at} and {@link Survey#of}, elsewhere. */
    public static ReadPicture look(
            Path file, IntakeLimits limits, int longerSide, Duration time, Consumer<Double> progress)
            throws IOException {
        knowFonts(file);
        return SeparateProcess.run(
                ReaderMain.class,
                arguments("look", file, limits, Integer.toString(longerSide)),
                time,
                line -> tell(line, progress),
                (folder, end) -> {
                    try (DataInputStream found = found(folder, end)) {
                        return new ReadPicture(Carried.facts(found), Carried.survey(found));
                    }
                });
    }

    /** The same as {@link UnpackedPixels#of}, elsewhere; the pixels come over as a file. */
    public static UnpackedPixels unpack(Path file, IntakeLimits limits, Duration time) throws IOException {
        knowFonts(file);
        return SeparateProcess.run(
                ReaderMain.class, arguments("unpack", file, limits, "0"), time, line -> {}, (folder, end) -> {
                    try (DataInputStream found = found(folder, end)) {
                        ImageHeader facts = Carried.facts(found);
                        int count = found.readInt();
                        boolean own = found.readBoolean();
                        Path pixels = Files.createTempFile("puzzle-pixels-", ".raw");
                        Files.move(folder.resolve("pixels"), pixels, StandardCopyOption.REPLACE_EXISTING);
                        return UnpackedPixels.unpacked(pixels, facts, DecodedRowSink.channels(facts, count, own));
                    }
                });
    }

    private static List<String> arguments(String what, Path file, IntakeLimits limits, String longerSide) {
        return List.of(
                what,
                file.toAbsolutePath().toString(),
                Long.toString(limits.bytes()),
                Long.toString(limits.pixels()),
                Integer.toString(limits.side()),
                longerSide);
    }

    private static DataInputStream found(Path folder, SeparateProcess.End end) throws IOException {
        Path refused = folder.resolve("refused");
        if (end == SeparateProcess.End.DONE && Files.exists(refused)) {
            try (DataInputStream in = new DataInputStream(Files.newInputStream(refused))) {
                throw new Refused(Carried.sentence(in));
            }
        }
        switch (end) {
            case TOO_LONG -> throw new Refused("artwork.refused.endless");
            case TOO_MUCH_MEMORY -> throw new Refused("artwork.refused.too-much-memory");
            case BROKEN -> {
                LOG.warn("A reading process broke: {}", lastWords(folder));
                throw new Refused("artwork.refused.damaged");
            }
            case DONE -> {}
        }
        return new DataInputStream(new BufferedInputStream(Files.newInputStream(folder.resolve("found"))));
    }

    private static String lastWords(Path folder) throws IOException {
        Path errors = folder.resolve("errors");
        String said = Files.exists(errors) ? Files.readString(errors) : "";
        return said.length() > 500 ? said.substring(0, 500) : said;
    }

    private static void tell(String line, Consumer<Double> progress) {
        if (line.startsWith("progress ")) {
            progress.accept(Double.parseDouble(line.substring(9)));
        }
    }

    /** Looking through a computer's fonts may take longer than a page is given; it is done once, before the first page. */
    private static void knowFonts(Path file) throws IOException {
        try (var in = Files.newInputStream(file)) {
            String start = new String(in.readNBytes(1024), java.nio.charset.StandardCharsets.ISO_8859_1);
            if (start.contains("%PDF-") && FONTS_KNOWN.compareAndSet(false, true) && !SeparateProcess.knowsFonts()) {
                SeparateProcess.run(ReaderMain.class, List.of("fonts"), FOR_FONTS, line -> {}, (folder, end) -> end);
            }
        }
    }
}
