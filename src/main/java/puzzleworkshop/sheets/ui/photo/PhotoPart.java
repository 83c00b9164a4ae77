package puzzleworkshop.sheets.ui.photo;

import com.vaadin.flow.component.AttachEvent;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Div;
import puzzleworkshop.artwork.Photos;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.fields.FileUpload;

/** A part of a screen that takes photos to measure in: a photo comes in beside the screen, and what is wrong with it is told there. */
public abstract class PhotoPart extends Div {

    protected final Note refusal = Note.refusal();
    private UI screen;

    /**
     * @param take opens the camera of a phone
     * @param kinds of files, as the browser is told
     * @param reader runs beside the screen, see {@link #screen}
     */
    protected FileUpload camera(Formatter figures, Button take, FileUpload.Reader reader, String... kinds) {
        FileUpload upload = new FileUpload(figures, Photos.MOST_BYTES, this::refuse, reader).camera(take);
        upload.setAcceptedMimeTypes(kinds);
        return upload;
    }

    /** Shows why a photo is of no use; nothing is wrong where there are no words. */
    protected void refuse(String words) {
        refusal.setText(words);
        refusal.setVisible(!words.isEmpty());
    }

    /** The screen it stands on, for what is read beside it. */
    protected UI screen() {
        return screen;
    }

    @Override
    protected void onAttach(AttachEvent event) {
        super.onAttach(event);
        screen = event.getUI();
    }
}
