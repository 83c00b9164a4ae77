package puzzleworkshop.printing.pdf;

import java.io.IOException;
import java.io.OutputStream;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.springframework.stereotype.Service;
import puzzleworkshop.artwork.CroppedPictures;
import puzzleworkshop.artwork.PrintPicture;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.printing.GangRuns;
import puzzleworkshop.printing.PrintItem;
import puzzleworkshop.printing.PrintRun;
import puzzleworkshop.printing.RunItem;

/** Draws a run's sheets as a PDF to be printed at 100 %. */
@Service
public class RunPrinter {

    /** Finer than any printer of this trade; a picture is never enlarged to it. */
    private static final double MOST_PPI = 1200;

    private final GangRuns runs;
    private final CroppedPictures pictures;
    private final Formatter figures;

    RunPrinter(GangRuns runs, CroppedPictures pictures, Formatter figures) {
        this.runs = runs;
        this.pictures = pictures;
        this.figures = figures;
    }

    /** {@code print-run-12.pdf} */
    public String fileName(long runId) {
        return "print-run-" + runId + ".pdf";
    }

    /**
     * Writes the PDF of a proposed or confirmed run.
     *
     * @param progress told the share that is written, 0 to 1
     * @throws Refused when an order of it was changed since it was proposed
     */
    public void write(long runId, OutputStream out, Consumer<Double> progress) throws IOException {
        PrintRun run = runs.get(runId);
        if (run.laid().isEmpty()) {
            throw new Refused("printing.run-empty");
        }
        Map<OrderId, PrintItem> waiting = new HashMap<>();
        runs.pictures(run).forEach(item -> waiting.put(item.order().id(), item));
        SheetMarks marks = new SheetMarks(figures.text("printing.pdf.title", runId), item -> lines(run, item, waiting));
        new SheetPdf(run, this::open, marks).write(waiting, out, progress);
    }

    private PrintPicture open(PrintItem item) {
        return pictures.print(item.picture(), item.crop(), item.finished(), item.overhang(), MOST_PPI);
    }

    private List<String> lines(PrintRun run, RunItem item, Map<OrderId, PrintItem> waiting) {
        int quantity = waiting.get(item.order().id()).quantity();
        String number = quantity > 1
                ? figures.text("printing.pdf.copy", item.order().number(), item.copy(), quantity)
                : item.order().number();
        String size = figures.text("printing.pdf.size", item.finished(), run.id());
        return List.of(number, size);
    }
}
