package puzzleworkshop.artwork.reading;

import com.drew.lang.ByteArrayReader;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifReader;

/** The orientation out of Exif data. Broken Exif is common and harmless: the picture is then shown as stored. */
final class Exif {

    private Exif() {}

    static int orientation(byte[] exif) {
        Metadata metadata = new Metadata();
        try {
            new ExifReader().extract(new ByteArrayReader(exif), metadata);
        } catch (RuntimeException broken) {
            return 1;
        }
        return orientation(metadata);
    }

    private static int orientation(Metadata metadata) {
        ExifIFD0Directory first = metadata.getFirstDirectoryOfType(ExifIFD0Directory.class);
        Integer value = first == null ? null : first.getInteger(ExifIFD0Directory.TAG_ORIENTATION);
        return value == null || value < 1 || value > 8 ? 1 : value;
    }
}
