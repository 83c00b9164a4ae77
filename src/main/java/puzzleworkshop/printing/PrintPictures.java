package puzzleworkshop.printing;

import java.io.IOException;
import puzzleworkshop.artwork.PrintPicture;

/** Where stickers get their pictures from; whoever asks closes them. */
@FunctionalInterface
public interface PrintPictures {
    PrintPicture open(PrintItem item) throws IOException;
}
