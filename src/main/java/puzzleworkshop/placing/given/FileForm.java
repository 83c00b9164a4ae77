package puzzleworkshop.placing.given;

import java.util.Optional;
import puzzleworkshop.cutfiles.writing.CutFile;

/** The forms in which a place is handed to the machine. */
public enum FileForm {
    SVG("svg", "image/svg+xml"),
    DXF("dxf", "image/vnd.dxf"),
    PDF("pdf", "application/pdf"),
    GCODE("nc", "text/plain");

    private final String ending;
    private final String mediaType;

    FileForm(String ending, String mediaType) {
        this.ending = ending;
        this.mediaType = mediaType;
    }

    public String ending() {
        return ending;
    }

    public String mediaType() {
        return mediaType;
    }

    public Optional<CutFile.Format> drawing() {
        return this == GCODE ? Optional.empty() : Optional.of(CutFile.Format.valueOf(name()));
    }
}
