package puzzleworkshop.demo;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.delivery.returns.Complaint;
import puzzleworkshop.measure.Size;
import puzzleworkshop.progress.Rework.What;
import puzzleworkshop.workshop.Stage;

/**
 * One order of the demo workshop's past year.
 *
 * @param board from which it is cut
 * @param tray whether it lies in one, cut from the same board
 * @param confirmed the day on which it was taken, a working day
 * @param days from then to the promised day
 * @param lateBy days after the promised day on which it was handed over; negative: before it
 * @param failed what went wrong on the way; empty for most
 * @param complaint what the customer complained of afterwards, which was credited; empty for most
 * @param paidAfter days after the hand-over; empty when it is still open
 */
record PastOrder(
        String customer,
        String contact,
        Size size,
        int columns,
        int rows,
        int quantity,
        BoardKind board,
        boolean tray,
        LocalDate confirmed,
        int days,
        int lateBy,
        Optional<What> failed,
        Optional<Grief> complaint,
        Optional<Integer> paidAfter) {

    private static final int MONTHS = 12;
    private static final long SEED = 20;

    /** Two wider ones do not lie side by side on a board of 600 mm. */
    private static final int BESIDE_EACH_OTHER = 250;

    /** Orders in each calendar month, January first: presents before Christmas and Mother's Day, quiet in summer. */
    private static final int[] BY_MONTH = {4, 5, 5, 6, 8, 5, 3, 3, 6, 7, 11, 14};

    private static final String[][] CUSTOMERS = {
        {"Sandpiper Books", "post@sandpiper.example"},
        {"Canal Street Archive", "desk@canalstreet.example"},
        {"Museum of Old Tools", "shop@oldtools.example"},
        {"Inn at the Locks", "front@innatthelocks.example"},
        {"Nils Ekdahl", "nils@ekdahl.example"},
        {"Quay Garden Café", "hello@quaygarden.example"},
        {"Anselm Roth", "anselm@roth.example"},
        {"Mirela Stoica", "0155 01 9931"},
        {"Hollow Tree Kindergarten", "office@hollowtree.example"},
        {"Jasper Oyelaran", "jasper@oyelaran.example"},
        {"Lighthouse Choir", "notes@lighthousechoir.example"},
        {"Greta Finch", "greta@finch.example"},
        {"Sunil Mathur", "sunil@mathur.example"},
        {"Bakers' Row Residents", "row@bakersrow.example"},
        {"Ewa Lis", "0155 01 6120"},
        {"Tobias Arden", "tobias@arden.example"},
        {"Marta Quayle", "marta@quayle.example"},
        {"Harbour Rowing Club", "boats@harbourrowing.example"}
    };

    private static final int[][] SIZES = {
        {300, 200, 8, 6}, {200, 150, 6, 4}, {297, 210, 12, 8}, {210, 148, 8, 5}, {150, 100, 4, 3}, {300, 200, 10, 6}
    };

    private static final What[] FAULTS = {
        What.CHARRED, What.BUBBLES, What.NOT_THROUGH, What.STUCK_ASKEW, What.CHARRED, What.PIECE_BROKEN, What.SHIFTED
    };

    /** What a customer complained of, and where it most likely arose. */
    enum Grief {
        CHARRED(Complaint.Reason.CHARRED, Stage.CUT, "A corner is charred."),
        DARK(Complaint.Reason.PRINT_FAULT, Stage.PRINT, "The picture is darker than mine."),
        /** Made again; the others get money back. */
        STUCK(Complaint.Reason.DOES_NOT_FIT, Stage.CUT, "Two pieces do not come apart.");

        private final Complaint.Reason reason;
        private final Stage stage;
        private final String words;

        Grief(Complaint.Reason reason, Stage stage, String words) {
            this.reason = reason;
            this.stage = stage;
            this.words = words;
        }

        Complaint.Reason reason() {
            return reason;
        }

        Stage stage() {
            return stage;
        }

        String words() {
            return words;
        }
    }

    LocalDate promised() {
        return BenchTime.orAfter(confirmed.plusDays(days));
    }

    /** The same once more, taken and handed over later, with nothing that goes wrong. */
    PastOrder again(LocalDate decided, int takes) {
        return new PastOrder(
                customer,
                contact,
                size,
                columns,
                rows,
                quantity,
                board,
                tray,
                decided,
                takes,
                0,
                Optional.empty(),
                Optional.empty(),
                paidAfter);
    }

    /** When the customer said what is wrong. */
    LocalDate complained() {
        return handedOver().plusDays(4);
    }

    boolean comesBack(LocalDate today) {
        return complaint.equals(Optional.of(Grief.STUCK)) && complained().isBefore(today.minusDays(14));
    }

    LocalDate handedOver() {
        LocalDate day = promised().plusDays(lateBy);
        return lateBy > 0 ? BenchTime.orAfter(day) : BenchTime.orBefore(day);
    }

    /** The orders of the twelve months before today, by the day on which they were taken; the same for the same day. */
    static List<PastOrder> yearBefore(LocalDate today) {
        SplittableRandom random = new SplittableRandom(SEED);
        List<PastOrder> orders = new ArrayList<>();
        LocalDate first = today.minusMonths(MONTHS).withDayOfMonth(1);
        LocalDate last = today.minusDays(16);
        for (LocalDate month = first; !month.isAfter(last); month = month.plusMonths(1)) {
            int count = BY_MONTH[month.getMonthValue() - 1];
            for (int i = 0; i < count; i++) {
                LocalDate day = month.plusDays(random.nextInt(month.lengthOfMonth()));
                PastOrder order = order(orders.size(), day, random);
                if (order.handedOver().isBefore(today.minusDays(1))) {
                    orders.add(order);
                }
            }
        }
        orders.sort(Comparator.comparing(PastOrder::confirmed));
        return orders.isEmpty() ? orders : withOneUnpaid(orders, today);
    }

    private static PastOrder order(int index, LocalDate day, SplittableRandom random) {
        String[] customer = CUSTOMERS[(int) (CUSTOMERS.length * Math.pow(random.nextDouble(), 1.6))];
        int[] size = SIZES[random.nextInt(SIZES.length)];
        int days = 7 + random.nextInt(8);
        boolean late = random.nextInt(100) < 13;
        boolean failed = random.nextInt(100) < 9;
        boolean complained = index % 17 == 5;
        int quantity = random.nextInt(4) == 0 && size[0] < BESIDE_EACH_OTHER ? 2 : 1;
        return new PastOrder(
                customer[0],
                customer[1],
                Size.mm(size[0], size[1]),
                size[2],
                size[3],
                quantity,
                board(index),
                quantity == 1 && size[0] < BESIDE_EACH_OTHER && index % 5 == 0,
                BenchTime.orAfter(day),
                days,
                late ? 1 + random.nextInt(4) : -random.nextInt(3),
                failed ? Optional.of(FAULTS[random.nextInt(FAULTS.length)]) : Optional.empty(),
                complained ? Optional.of(Grief.values()[index / 17 % Grief.values().length]) : Optional.empty(),
                Optional.of(random.nextInt(14)));
    }

    /** Birch for most; poplar is cheaper, and some want it thicker. */
    private static BoardKind board(int index) {
        return index % 7 == 2 ? DemoStock.POPLAR : index % 11 == 6 ? DemoStock.THICK_BIRCH : DemoStock.BIRCH;
    }

    /** The last one that could have been paid for three weeks has not been: there is somebody to remind. */
    private static List<PastOrder> withOneUnpaid(List<PastOrder> orders, LocalDate today) {
        for (int i = orders.size() - 1; i >= 0; i--) {
            PastOrder of = orders.get(i);
            if (of.handedOver().isBefore(today.minusDays(24)) && of.complaint().isEmpty()) {
                orders.set(
                        i,
                        new PastOrder(
                                of.customer,
                                of.contact,
                                of.size,
                                of.columns,
                                of.rows,
                                of.quantity,
                                of.board,
                                of.tray,
                                of.confirmed,
                                of.days,
                                of.lateBy,
                                of.failed,
                                Optional.empty(),
                                Optional.empty()));
                break;
            }
        }
        return orders;
    }
}
