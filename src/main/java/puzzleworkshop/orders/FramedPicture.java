package puzzleworkshop.orders;

import puzzleworkshop.artwork.PictureId;
import puzzleworkshop.artwork.pixels.Crop;

/** A customer's picture and the part of it that becomes the puzzle. */
public record FramedPicture(PictureId picture, Crop crop) {}
