package puzzleworkshop.placing.ui;

import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H4;
import com.vaadin.flow.server.streams.DownloadHandler;
import com.vaadin.flow.server.streams.DownloadResponse;
import java.io.ByteArrayInputStream;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import puzzleworkshop.cutfiles.writing.GcodeFile.Purpose;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.placing.PositionFiles;
import puzzleworkshop.placing.given.FileForm;

/** The files for one place, the frame first, with the setting large beside them; what is not written says why. */
class FilesForPlace extends Div {

    private static final int CONFLICT = 409;

    private final transient PositionFiles files;
    private final transient List<Long> places;
    private final transient Formatter figures;
    private final String who;

    /** @param places of one cut: one board, or several that lie on the bed together */
    FilesForPlace(CutJob job, List<Long> places, PositionFiles files, Formatter figures, String who) {
        this.files = files;
        this.places = List.copyOf(places);
        this.figures = figures;
        this.who = who;
        addClassName("placing-files");
        add(new DialledSetting(job.setting().machine(), job.parameters(), figures));
        Map<PositionFiles.Choice, Sentence> obstacles = files.obstacles(places);
        for (Purpose purpose : new Purpose[] {Purpose.FRAME, Purpose.DRY_RUN, Purpose.CUT}) {
            links(purpose, obstacles);
        }
    }

    private void links(Purpose purpose, Map<PositionFiles.Choice, Sentence> obstacles) {
        Div row = new Div(new H4(figures.text("placing.file." + purpose)));
        row.addClassName("placing-file-row");
        SmallText why = new SmallText(figures.text("placing.file." + purpose + ".why"));
        Div links = new Div();
        links.addClassName("pattern-links");
        Set<String> reasons = new LinkedHashSet<>();
        for (FileForm form : FileForm.values()) {
            if (purpose == Purpose.DRY_RUN && form != FileForm.GCODE) {
                continue;
            }
            Optional<Sentence> obstacle = Optional.ofNullable(obstacles.get(new PositionFiles.Choice(purpose, form)));
            obstacle.map(figures::say).ifPresent(reasons::add);
            if (obstacle.isEmpty()) {
                links.add(link(purpose, form));
            }
        }
        row.add(why, links);
        for (String reason : reasons) {
            row.add(new Verdict(Verdict.Kind.WAIT, figures.text("placing.file.not-written", reason)));
        }
        add(row);
    }

    private Anchor link(Purpose purpose, FileForm form) {
        Anchor link = new Anchor(
                DownloadHandler.fromInputStream(event -> {
                    try {
                        PositionFiles.Written written = files.write(places, purpose, form, who);
                        return new DownloadResponse(
                                new ByteArrayInputStream(written.bytes()),
                                written.file().name(),
                                form.mediaType(),
                                written.bytes().length);
                    } catch (Refused meanwhile) {
                        return DownloadResponse.error(CONFLICT, figures.say(meanwhile));
                    }
                }),
                figures.text("placing.form." + form));
        link.getElement().setAttribute("download", true);
        link.addClassName("pattern-link");
        return link;
    }
}
