package puzzleworkshop.orders;

import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.artwork.PictureId;

/** A customer's picture and the part of it that becomes the puzzle. */
public record FramedPicture(PictureId picture, Crop crop) {}
