package puzzleworkshop.artwork.separate;

import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import puzzleworkshop.artwork.pixels.Frame;
import puzzleworkshop.artwork.pixels.Light;
import puzzleworkshop.artwork.pixels.Survey;
import puzzleworkshop.artwork.reading.ColourFacts;
import puzzleworkshop.artwork.reading.ImageHeader;
import puzzleworkshop.artwork.reading.PictureFormat;
import puzzleworkshop.measure.Sentence;

/** Writes what was read of a picture so that another process of ours can read it: every field in order, nothing else. */
final class Carried {

    /** Longest array that is taken: a copy of 1,600 pixels a side and the largest profile stay below. */
    private static final int MOST_BYTES = 64 << 20;

    private static final int MOST_SENTENCES = 50;

    private Carried() {}

    static void write(ImageHeader facts, DataOutputStream out) throws IOException {
        out.writeUTF(facts.format().name());
        out.writeInt(facts.storedWidth());
        out.writeInt(facts.storedHeight());
        out.writeInt(facts.orientation());
        out.writeUTF(facts.colours().model().name());
        out.writeInt(facts.colours().bits());
        out.writeBoolean(facts.colours().alpha());
        out.writeUTF(facts.colours().profile().orElse(""));
        write(facts.icc().orElse(new byte[0]), out);
        out.writeInt(facts.notices().size());
        for (Sentence notice : facts.notices()) {
            write(notice, out);
        }
    }

    /** What a JPEG's decoder must know stays behind: the pixels are decoded already. */
    static ImageHeader facts(DataInputStream in) throws IOException {
        PictureFormat format = PictureFormat.valueOf(in.readUTF());
        int width = in.readInt();
        int height = in.readInt();
        int orientation = in.readInt();
        ColourFacts.Model model = ColourFacts.Model.valueOf(in.readUTF());
        int bits = in.readInt();
        boolean alpha = in.readBoolean();
        String profile = in.readUTF();
        byte[] icc = bytes(in);
        List<Sentence> notices = new ArrayList<>();
        int count = in.readInt();
        if (count > MOST_SENTENCES) {
            throw new IOException("Not what was written");
        }
        for (int i = 0; i < count; i++) {
            notices.add(sentence(in));
        }
        return new ImageHeader(
                format,
                width,
                height,
                orientation,
                new ColourFacts(model, bits, alpha, Optional.of(profile).filter(name -> !name.isEmpty())),
                Optional.of(icc).filter(some -> some.length > 0),
                Optional.empty(),
                notices);
    }

    static void write(Survey survey, DataOutputStream out) throws IOException {
        out.writeInt(survey.copy().width());
        out.writeInt(survey.copy().height());
        write(survey.copy().samples(), out);
        out.writeBoolean(survey.detail().isPresent());
        out.writeDouble(survey.detail().orElse(0));
        out.writeDouble(survey.light().darkShare());
        out.writeDouble(survey.light().median());
        out.writeDouble(survey.light().contrast());
    }

    static Survey survey(DataInputStream in) throws IOException {
        int width = in.readInt();
        int height = in.readInt();
        Frame copy = new Frame(width, height, 3, bytes(in));
        boolean known = in.readBoolean();
        double detail = in.readDouble();
        return new Survey(
                copy,
                known ? OptionalDouble.of(detail) : OptionalDouble.empty(),
                new Light(in.readDouble(), in.readDouble(), in.readDouble()));
    }

    /** Arguments are whole numbers or texts, as all sentences about files have them. */
    static void write(Sentence sentence, DataOutputStream out) throws IOException {
        out.writeUTF(sentence.key());
        out.writeInt(sentence.arguments().size());
        for (Object argument : sentence.arguments()) {
            boolean number = argument instanceof Number;
            out.writeBoolean(number);
            if (number) {
                out.writeLong(((Number) argument).longValue());
            } else {
                out.writeUTF(argument.toString());
            }
        }
    }

    static Sentence sentence(DataInputStream in) throws IOException {
        String key = in.readUTF();
        int count = in.readInt();
        if (count > MOST_SENTENCES) {
            throw new IOException("Not what was written");
        }
        List<Object> arguments = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            if (in.readBoolean()) {
                arguments.add(in.readLong());
            } else {
                arguments.add(in.readUTF());
            }
        }
        return new Sentence(key, arguments);
    }

    private static void write(byte[] bytes, DataOutputStream out) throws IOException {
        out.writeInt(bytes.length);
        out.write(bytes);
    }

    private static byte[] bytes(DataInputStream in) throws IOException {
        int length = in.readInt();
        if (length < 0 || length > MOST_BYTES) {
            throw new IOException("Not what was written");
        }
        byte[] bytes = new byte[length];
        in.readFully(bytes);
        return bytes;
    }
}
