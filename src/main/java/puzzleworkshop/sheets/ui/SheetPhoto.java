package puzzleworkshop.sheets.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Image;
import com.vaadin.flow.component.upload.Upload;
import com.vaadin.flow.server.streams.DownloadHandler;
import com.vaadin.flow.server.streams.DownloadResponse;
import com.vaadin.flow.server.streams.UploadHandler;
import java.io.ByteArrayInputStream;
import puzzleworkshop.artwork.Photos;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.workshop.SignedIn;

/** The photo of a sheet, and taking or choosing another. */
public class SheetPhoto extends Div {

    public SheetPhoto(Sheet sheet, SheetRack rack, SignedIn who, Formatter figures, Runnable changed) {
        if (sheet.hasPhoto()) {
            Image image = new Image(
                    DownloadHandler.fromInputStream(event -> {
                        byte[] jpeg = rack.photo(sheet.id()).orElse(new byte[0]);
                        return new DownloadResponse(
                                new ByteArrayInputStream(jpeg), "sheet.jpg", "image/jpeg", jpeg.length);
                    }),
                    figures.text("sheets.photo.of", sheet.id().toString()));
            image.addClassName("sheets-photo");
            add(image);
        }
        Upload upload = new Upload(UploadHandler.inMemory((meta, bytes) -> {
            if (Feedback.unlessRefused(figures, "sheets.photo.kept", () -> rack.photo(sheet.id(), bytes, who.name()))) {
                changed.run();
            }
        }));
        upload.setAcceptedMimeTypes("image/*");
        upload.setMaxFiles(1);
        upload.setMaxFileSize(Photos.MOST_BYTES);
        upload.setUploadButton(new Button(figures.text("sheets.photo.take")));
        upload.setDropAllowed(false);
        add(upload);
    }
}
