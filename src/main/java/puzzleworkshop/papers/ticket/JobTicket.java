package puzzleworkshop.papers.ticket;

import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.bench.HandOverChecks;
import puzzleworkshop.boards.BlanksWaiting;
import puzzleworkshop.boards.Chosen;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.cutting.settings.Settings;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.preview.PreviewRenderer;
import puzzleworkshop.placing.Positions;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetRack;

/**
 * The paper that goes with an order through the workshop: picture, size, pieces, the sheet and where it lies, settings,
 * stages to tick with what to look at, and a QR code that opens the order.
 */
@Service
public class JobTicket {

    private static final int FACE_PIXELS = 1100;

    private final PreviewRenderer faces;
    private final BlanksWaiting blanks;
    private final SheetRack rack;
    private final Machines machines;
    private final Settings settings;
    private final Positions positions;
    private final HandOverChecks handOver;
    private final Formatter figures;

    JobTicket(
            PreviewRenderer faces,
            BlanksWaiting blanks,
            SheetRack rack,
            Machines machines,
            Settings settings,
            Positions positions,
            HandOverChecks handOver,
            Formatter figures) {
        this.positions = positions;
        this.handOver = handOver;
        this.faces = faces;
        this.blanks = blanks;
        this.rack = rack;
        this.machines = machines;
        this.settings = settings;
        this.figures = figures;
    }

    /** A block of the order with the sheet it is cut from, if that is on the rack already. */
    record Board(Chosen block, Optional<Sheet> sheet) {}

    /**
     * @param address where a phone finds the order's page
     * @return PDF, A4 or Letter as the house's units have it
     */
    @Transactional(readOnly = true)
    public byte[] pdf(Order order, String address) {
        byte[] face = faces.jpeg(order.puzzle(), order.picture(), FACE_PIXELS);
        List<Board> boards = blanks.of(order.id()).stream()
                .map(block -> new Board(block, block.sheet().flatMap(rack::find)))
                .toList();
        Optional<CutSetting> setting = machines.standard().map(machine -> settings.forBoard(machine, order.board()));
        return new JobTicketPdf(
                        order, face, boards, setting, positions.given(order.id()), handOver.of(order), address, figures)
                .write();
    }
}
