package puzzleworkshop.placing.given;

import java.util.Optional;
import puzzleworkshop.cutfiles.writing.CutFile;

/** The forms in which a place is handed to the machine: a drawing, or the moves of the machine itself. */
public enum FileForm {
    SVG(CutFile.Format.SVG),
    DXF(CutFile.Format.DXF),
    PDF(CutFile.Format.PDF),
    GCODE("nc", "text/plain");

    private final Optional<CutFile.Format> drawing;
    private final String ending;
    private final String mediaType;

    FileForm(CutFile.Format drawing) {
        this.drawing = Optional.of(drawing);
        this.ending = drawing.ending();
        this.mediaType = drawing.mediaType();
    }

    FileForm(String ending, String mediaType) {
        this.drawing = Optional.empty();
        this.ending = ending;
        this.mediaType = mediaType;
    }

    public static FileForm of(CutFile.Format drawing) {
        return valueOf(drawing.name());
    }

    public String ending() {
        return ending;
    }

    public String mediaType() {
        return mediaType;
    }

    /** Empty for the machine's own moves. */
    public Optional<CutFile.Format> drawing() {
        return drawing;
    }
}
