package puzzleworkshop.artwork.reading;

/** The kinds of file that are taken, told by their content, never by their name. */
public enum PictureFormat {
    JPEG("image/jpeg", "jpg"),
    PNG("image/png", "png"),
    TIFF("image/tiff", "tif"),
    WEBP("image/webp", "webp"),
    PDF("application/pdf", "pdf");

    private final String mediaType;
    private final String ending;

    PictureFormat(String mediaType, String ending) {
        this.mediaType = mediaType;
        this.ending = ending;
    }

    public String mediaType() {
        return mediaType;
    }

    /** The usual end of a file name, without the dot. */
    public String ending() {
        return ending;
    }
}
