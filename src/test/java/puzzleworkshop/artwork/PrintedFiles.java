package puzzleworkshop.artwork;

import java.nio.file.Path;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/** Prints of picture files without a database, for the benchmark. */
public final class PrintedFiles {

    private PrintedFiles() {}

    public static PrintPicture print(Path original, Crop crop, Size finished, Length overhang) {
        return CroppedPictures.print(original, crop, finished, overhang, 1200, 1200);
    }
}
