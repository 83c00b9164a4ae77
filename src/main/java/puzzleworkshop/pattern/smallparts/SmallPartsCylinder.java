package puzzleworkshop.pattern.smallparts;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/**
 * Whether a solid fits entirely into the small-parts cylinder: 31.75 mm across, open at the top, its bottom slanted by
 * 45° so that it is 25.4 mm deep on one side and 57.15 mm on the other (16 CFR 1501.4, figure 1: 1.25, 1 and 2.25 in).
 *
 * <p>The inside of the cylinder is convex, so a solid fits exactly when its convex hull does, and it is enough to look
 * at corner points (and a roundness about them, for a ball or a rounded rod). For one orientation the answer is exact:
 * the solid is raised to the rim, and the best place in plan is the right-most point of an intersection of discs. All
 * orientations are covered by boxes of quaternions that are halved until they are decided: a whole box is out when what
 * forbids its middle orientation forbids all of it ({@link FarkasCertificate}). What is not decided within the budget is
 * answered {@link Answer#UNSURE} and must be treated as fitting.
 */
final class SmallPartsCylinder {

    static final double RADIUS_MM = 31.75 / 2;
    static final double SHALLOW_MM = 25.4;
    static final double DEEP_MM = 57.15;

    private static final double FINEST_MM = 0.04;
    private static final int FIRST_CUT = 4;
    /**
     * What keeps the solid out of a cylinder larger by these shares of a box's motion is tried as the reason for the whole
     * box: of the many reasons one and the same orientation has, another is the strongest each time.
     */
    private static final double NEARLY = 0.2;

    private static final double FAR = 0.45;
    private static final List<double[]> LIKELY = likely();

    enum Answer {
        FITS,
        DOES_NOT_FIT,
        UNSURE
    }

    private final TurnedSolid solid;
    private final CylinderRoom room;

    private SmallPartsCylinder(TurnedSolid solid, double roundMm, double slackMm) {
        this.solid = solid;
        room = new CylinderRoom(solid, roundMm, slackMm);
    }

    /**
     * @param solid what is put in
     * @param roundMm radius of a ball carried along the hull (0 for a solid with sharp edges)
     * @param slackMm by how much the cylinder is taken larger on all sides, to be on the safe side
     * @param budget most orientations looked at
     */
    static Answer test(TurnedSolid solid, double roundMm, double slackMm, int budget) {
        return new SmallPartsCylinder(solid, roundMm, slackMm).answer(budget);
    }

    private Answer answer(int budget) {
        if (likelyOrientationFits()) {
            return Answer.FITS;
        }
        // those first that nearly fit: where a solid fits by little, it is found soon
        PriorityQueue<OrientationBox> boxes = new PriorityQueue<>(Comparator.comparingDouble(OrientationBox::lacksMm));
        // The cylinder is its own mirror image front to back. A solid that is its own too, as a plate is, fits in the
        // orientation (w, i, j, k) just as in (i, w, -k, -j), and two of the four faces tell all.
        for (int face = 0; face < 4; face += solid.isItsOwnMirrorImage() ? 2 : 1) {
            boxes.addAll(OrientationBox.wholeFace(face, FIRST_CUT, solid.reach()));
        }
        boolean sure = true;
        while (!boxes.isEmpty()) {
            OrientationBox box = boxes.poll();
            double angle = box.farthestTurn();
            double moved = 2 * solid.reach() * Math.sin(angle / 2);
            solid.turnTo(box.middle());
            if (!room.fits(moved)) {
                continue;
            }
            if (room.fits(0)) {
                return Answer.FITS;
            }
            if (room.isKeptOutWithin(angle)) {
                continue;
            }
            boolean nearly = room.fits(moved * NEARLY);
            if (!nearly && (room.isKeptOutWithin(angle) || isKeptOutFar(moved, angle))) {
                continue;
            }
            if (room.looks() > budget) {
                return Answer.UNSURE;
            }
            if (moved < FINEST_MM) {
                sure = false;
            } else {
                boxes.addAll(box.halved(nearly ? moved * NEARLY : moved));
            }
        }
        return sure ? Answer.DOES_NOT_FIT : Answer.UNSURE;
    }

    private boolean isKeptOutFar(double moved, double angle) {
        return !room.fits(moved * FAR) && room.isKeptOutWithin(angle);
    }

    /** Flat, upright and slanting plates turned about their own normal: where a piece that fits mostly does. */
    private boolean likelyOrientationFits() {
        for (double[] likely : LIKELY) {
            solid.turnTo(likely);
            if (room.fits(0)) {
                return true;
            }
        }
        return false;
    }

    private static List<double[]> likely() {
        List<double[]> all = new ArrayList<>();
        for (int facing = 0; facing < 4; facing++) {
            for (int lean = 0; lean <= 90; lean += 15) {
                for (int turn = 0; turn < 360; turn += 6) {
                    all.add(Quaternion.after(
                            Quaternion.about(2, facing * 90),
                            Quaternion.after(Quaternion.about(1, lean), Quaternion.about(2, turn))));
                }
            }
        }
        return all;
    }
}
