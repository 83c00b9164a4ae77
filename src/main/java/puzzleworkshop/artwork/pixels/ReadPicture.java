package puzzleworkshop.artwork.pixels;

import puzzleworkshop.artwork.reading.ImageHeader;

/** What one look at a file gives. */
public record ReadPicture(ImageHeader facts, Survey survey) {}
