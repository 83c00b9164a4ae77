package puzzleworkshop.database.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.server.streams.DownloadEvent;
import com.vaadin.flow.server.streams.DownloadHandler;
import java.io.IOException;
import java.time.Clock;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import org.springframework.beans.factory.ObjectProvider;
import puzzleworkshop.database.Backup;
import puzzleworkshop.database.EmbeddedServer;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.workshop.Workshop;
import puzzleworkshop.workshop.ui.SetUpPart;
import puzzleworkshop.workshop.ui.SetUpSection;

/** Makes a backup and says how it is read back. Stands in Set-up, which only an owner may enter. */
@org.springframework.stereotype.Component
class BackupSection implements SetUpSection {

    private static final DateTimeFormatter STAMP = DateTimeFormatter.ofPattern("yyyy-MM-dd-HHmm");

    private final Backup backup;
    private final Workshop workshop;
    private final Formatter figures;
    private final Clock clock;
    private final ObjectProvider<EmbeddedServer> server;

    BackupSection(
            Backup backup, Workshop workshop, Formatter figures, Clock clock, ObjectProvider<EmbeddedServer> server) {
        this.backup = backup;
        this.workshop = workshop;
        this.figures = figures;
        this.clock = clock;
        this.server = server;
    }

    @Override
    public int place() {
        return 95;
    }

    @Override
    public List<SetUpPart> parts() {
        return List.of(new SetUpPart("database.backup", this::show));
    }

    private Component show() {
        Anchor download = new Anchor((DownloadHandler) this::send, figures.text("database.backup.make"));
        download.addClassName("database-download");
        download.setRouterIgnore(true);
        SmallText back = new SmallText(figures.text("database.backup.back"));
        Div section = new Styled();
        section.add(
                new H2(figures.text("database.backup")),
                new Paragraph(figures.text("database.backup.lead")),
                download,
                size(),
                back);
        section.addClassName("pw-section");
        server.stream()
                .flatMap(embedded -> embedded.startedAgain().stream())
                .forEach(at -> section.add(new Paragraph(figures.text("database.started-again", at))));
        return section;
    }

    private Paragraph size() {
        long megabytes = Math.ceilDiv(backup.expectedBytes(), 1_000_000);
        SmallText size = new SmallText(figures.text("database.backup.size", megabytes));
        return size;
    }

    /** Carries the style sheet. */
    @StyleSheet("context://database.css")
    private static final class Styled extends Div {}

    private void send(DownloadEvent event) throws IOException {
        event.setFileName(
                "puzzle-workshop-" + STAMP.format(LocalDateTime.now(clock.withZone(workshop.zone()))) + ".zip");
        event.setContentType("application/zip");
        backup.write(event.getOutputStream());
    }
}
