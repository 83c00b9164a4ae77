package puzzleworkshop.artwork.separate;

import java.io.BufferedOutputStream;
import java.io.DataOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.pdfbox.pdmodel.font.FontMappers;
import puzzleworkshop.artwork.pixels.Survey;
import puzzleworkshop.artwork.pixels.UnpackedPixels;
import puzzleworkshop.artwork.reading.ImageHeader;
import puzzleworkshop.artwork.reading.IntakeLimits;
import puzzleworkshop.artwork.rows.ImageProbe;
import puzzleworkshop.artwork.rows.Pixels;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;

/**
 * The other process: reads one file and leaves what it found in its working folder. {@code look} leaves {@code found},
 * {@code unpack} leaves {@code pixels} as well, {@code fonts} only finds out which fonts there are. A refusal is left in
 * {@code refused}. Prints its progress.
 */
public final class ReaderMain {

    /** What the parent reads. Nothing else may write there. */
    private static final PrintStream TO_PARENT =
            new PrintStream(new FileOutputStream(FileDescriptor.out), true, StandardCharsets.UTF_8);

    private ReaderMain() {}

    public static void main(String[] args) {
        Thread.ofPlatform().daemon().start(ReaderMain::endWithParent);
        int code = 0;
        try {
            work(args);
        } catch (Throwable any) {
            code = refuse(any);
        }
        TO_PARENT.flush();
        Runtime.getRuntime().halt(code);
    }

    private static void work(String[] args) throws IOException {
        if (args[0].equals("fonts")) {
            FontMappers.instance().getFontBoxFont("Helvetica", null);
            return;
        }
        Path file = Path.of(args[1]);
        IntakeLimits limits =
                new IntakeLimits(Long.parseLong(args[2]), Long.parseLong(args[3]), Integer.parseInt(args[4]));
        ImageHeader facts = ImageProbe.at(file, limits);
        try (DataOutputStream out =
                new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(Path.of("found"))))) {
            Carried.write(facts, out);
            if (args[0].equals("look")) {
                Survey survey = Survey.of(
                        file, facts, Integer.parseInt(args[5]), share -> TO_PARENT.println("progress " + share));
                Carried.write(survey, out);
            } else {
                Pixels.Channels channels = UnpackedPixels.unpack(file, facts, Path.of("pixels"));
                out.writeInt(channels.count());
                out.writeBoolean(channels.own());
            }
        }
    }

    /** Whatever a reader trips over is the file's fault, and the same for its sender. */
    private static int refuse(Throwable any) {
        Sentence why = any instanceof Refused said
                ? said.sentence()
                : Sentence.of(
                        any instanceof OutOfMemoryError
                                ? "artwork.refused.too-much-memory"
                                : "artwork.refused.damaged");
        try (DataOutputStream out = new DataOutputStream(Files.newOutputStream(Path.of("refused")))) {
            Carried.write(why, out);
            return 0;
        } catch (IOException full) {
            return 1;
        }
    }

    /** The parent holds our input open as long as it lives. */
    private static void endWithParent() {
        try {
            while (System.in.read() >= 0) {
                // nothing is ever said
            }
        } catch (IOException gone) {
            // as good as its end
        }
        Runtime.getRuntime().halt(2);
    }
}
