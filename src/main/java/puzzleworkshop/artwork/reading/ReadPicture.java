package puzzleworkshop.artwork.reading;

/** What one look at a file gives. */
public record ReadPicture(ImageHeader facts, Survey survey) {}
