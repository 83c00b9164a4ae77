package puzzleworkshop.cutfiles.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.server.streams.DownloadHandler;
import com.vaadin.flow.server.streams.DownloadResponse;
import java.io.ByteArrayInputStream;
import java.util.function.Function;
import java.util.function.Supplier;
import puzzleworkshop.cutfiles.writing.CutFile;
import puzzleworkshop.cutfiles.writing.CutFileName;
import puzzleworkshop.cutfiles.writing.CutPlan;

/** Links that hand out a cut file in each of its forms; it is written when it is asked for. */
@StyleSheet("context://pattern.css")
public class CutFileLinks extends Div {

    /**
     * @param name of the file, without its ending
     * @param plan made when a link is followed, so that it costs nothing to show them
     */
    public CutFileLinks(String name, Supplier<CutPlan> plan) {
        this(name, format -> CutFile.write(plan.get(), format).bytes());
    }

    /**
     * @param name of the file, without its ending
     * @param written its bytes, asked for when a link is followed
     */
    public CutFileLinks(String name, Function<CutFile.Format, byte[]> written) {
        addClassName("pattern-links");
        for (CutFile.Format format : CutFile.Format.values()) {
            String fileName = CutFileName.of(name, format.ending());
            Anchor link = new Anchor(
                    DownloadHandler.fromInputStream(event -> {
                        byte[] bytes = written.apply(format);
                        return new DownloadResponse(
                                new ByteArrayInputStream(bytes), fileName, format.mediaType(), bytes.length);
                    }),
                    format.name());
            link.getElement().setAttribute("download", fileName);
            link.setTitle(getTranslation("pattern.links.title", format.name()));
            link.addClassName("pattern-link");
            add(link);
        }
    }
}
