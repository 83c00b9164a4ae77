package puzzleworkshop.printing;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import puzzleworkshop.artwork.PictureId;
import puzzleworkshop.artwork.PrintedFiles;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Size;
import puzzleworkshop.printing.crosses.Crosses;
import puzzleworkshop.printing.media.PrintMedium;
import puzzleworkshop.printing.pdf.SheetMarks;
import puzzleworkshop.printing.pdf.SheetPdf;

/** Orders of 300 × 200 mm, each with a picture file of its own, four to a sheet: for the benchmark. */
public final class LargeRun {

    private static final Size FINISHED = Size.mm(300, 200);
    private static final Length OVERHANG = Length.mm(3);

    private LargeRun() {}

    /** @return how many pictures went as they are */
    public static int write(List<Path> files, Crop crop, Path pdf) throws IOException {
        PrintMedium medium = new PrintMedium(
                Optional.of(1L),
                "Large",
                PrintMedium.Kind.SHEET,
                Size.mm(700, 500),
                Length.mm(5),
                Length.mm(5),
                Optional.empty(),
                Optional.empty(),
                true);
        List<RunItem> items = new ArrayList<>();
        Map<OrderId, PrintItem> waiting = new HashMap<>();
        for (int i = 0; i < files.size(); i++) {
            long order = i + 1;
            items.add(new RunItem(
                    order,
                    new OrderRef(new OrderId(order), "2026-%04d".formatted(order)),
                    1,
                    "",
                    FINISHED,
                    OVERHANG,
                    Optional.empty(),
                    i / 4,
                    Length.mm(10 + i % 2 * 330),
                    Length.mm(10 + i / 2 % 2 * 230),
                    false,
                    false,
                    RunItem.Outcome.PLANNED,
                    ""));
            waiting.put(
                    new OrderId(order),
                    new PrintItem(
                            new OrderRef(new OrderId(order), "2026-%04d".formatted(order)),
                            1,
                            FINISHED,
                            OVERHANG,
                            Optional.empty(),
                            new PictureId(new UUID(1, order)),
                            crop));
        }
        PrintRun run = new PrintRun(
                1,
                RunState.PROPOSED,
                medium,
                Optional.of(Crosses.USUAL),
                items,
                (files.size() + 3) / 4,
                1,
                Length.mm(500),
                Length.ZERO,
                Instant.EPOCH,
                "Robin",
                Optional.empty(),
                0);
        int[] untouched = new int[1];
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(pdf))) {
            new SheetPdf(
                            run,
                            item -> {
                                var print = PrintedFiles.print(
                                        files.get((int) item.order().id().value() - 1),
                                        item.crop(),
                                        item.finished(),
                                        item.overhang());
                                untouched[0] += print.untouched() ? 1 : 0;
                                return print;
                            },
                            new SheetMarks(
                                    "Large run", item -> List.of(item.order().number())))
                    .write(waiting, out, share -> {});
        }
        return untouched[0];
    }
}
