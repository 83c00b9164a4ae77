package puzzleworkshop.camera.sheet;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import puzzleworkshop.camera.Photo;
import puzzleworkshop.measure.Refused;

/** Finds the measuring sheet (or the cards) in a photo and from where it was taken; refuses where that is not sure. */
public final class MeasuringSheetFinder {

    /** Fewer markers than this leave the lens to guessing. */
    private static final int FEWEST = 6;

    /** Markers of one card, at least: fewer and its own turn is not sure. */
    private static final int FEWEST_OF_CARD = 3;

    /** Corners that lie farther from where they should be, on average and in mm, mean a sheet that does not lie flat. */
    private static final double WORST_RESIDUAL_MM = 0.35;

    private static final double WORST_BLUR_MM = 0.8;

    /**
     * A marker that a board half covers may be read as another one: the code's errors are corrected to the nearest. Of so many
     * it is believed that they were misread, of more that the sheet is not what it seems.
     */
    private static final double MOST_MISREAD = 0.125;

    private MeasuringSheetFinder() {}

    /** @throws Refused with what to do: no sheet, too few markers, blurred, not flat, seen too far from the side */
    public static SeenSheet find(Photo photo) {
        return find(photo, MarkerFinder.find(photo));
    }

    static SeenSheet find(Photo photo, List<SeenMarker> all) {
        Map<MeasuringSheet, List<SeenMarker>> bySheet = new EnumMap<>(MeasuringSheet.class);
        for (SeenMarker marker : all) {
            bySheet.computeIfAbsent(MeasuringSheet.of(marker.code()).orElseThrow(), s -> new ArrayList<>())
                    .add(marker);
        }
        if (bySheet.isEmpty()) {
            throw new Refused("camera.sheet.none");
        }
        MeasuringSheet sheet = bySheet.entrySet().stream()
                .max(Comparator.comparingInt(e -> e.getValue().size()))
                .orElseThrow()
                .getKey();
        return of(photo, sheet, bySheet.get(sheet));
    }

    private static SeenSheet of(Photo photo, MeasuringSheet sheet, List<SeenMarker> seen) {
        Map<Integer, List<SeenMarker>> byPart = new TreeMap<>();
        for (SeenMarker marker : seen) {
            byPart.computeIfAbsent(sheet.partOf(marker.code()), p -> new ArrayList<>())
                    .add(marker);
        }
        if (sheet.parts() > 1) {
            byPart.values().removeIf(markers -> markers.size() < FEWEST_OF_CARD);
        }
        int used = byPart.values().stream().mapToInt(List::size).sum();
        if (used < FEWEST) {
            throw new Refused("camera.sheet.few", used, FEWEST);
        }
        if (sheet.parts() > 1 && byPart.size() < 2) {
            throw new Refused("camera.cards.few");
        }
        List<Integer> parts = new ArrayList<>(byPart.keySet());
        double[] known = new double[8 * used];
        double[] found = new double[8 * used];
        int[] card = new int[4 * used];
        int at = 0;
        Set<Integer> codes = new HashSet<>();
        List<SeenMarker> laid = new ArrayList<>();
        for (int c = 0; c < parts.size(); c++) {
            for (SeenMarker marker : byPart.get(parts.get(c))) {
                System.arraycopy(sheet.marker(marker.code()).corners(), 0, known, 8 * at, 8);
                System.arraycopy(marker.corners(), 0, found, 8 * at, 8);
                Arrays.fill(card, 4 * at, 4 * at + 4, c);
                codes.add(marker.code());
                laid.add(marker);
                at++;
            }
        }
        if (sheet.parts() == 1) {
            requireSpread(known, sheet);
        }
        LikeliestView likeliest = new LikeliestView(
                LensGuess.of(photo.focal()),
                guess -> new ViewFit(known, found, card, parts.size(), photo.width(), photo.height(), guess));
        ViewFit fit = likeliest.fit;
        List<SeenMarker> misread = misread(fit, laid);
        if (!misread.isEmpty() && misread.size() <= used * MOST_MISREAD) {
            List<SeenMarker> others = new ArrayList<>(seen);
            others.removeAll(misread);
            return of(photo, sheet, others);
        }
        List<SeenSheet.Card> places = new ArrayList<>();
        for (int c = 0; c < parts.size(); c++) {
            places.add(fit.place(fit.best, c, parts.get(c)));
        }
        SeenSheet result = new SeenSheet(sheet, fit.view(fit.best), places, codes, residual(fit), likeliest::doubt);
        requireSure(result, fit);
        requireSharp(photo, result, seen);
        return result;
    }

    /** Those that lie further from their place than they are large: a sheet that is bent moves none so far. */
    private static List<SeenMarker> misread(ViewFit fit, List<SeenMarker> laid) {
        double[] far = fit.distances();
        List<SeenMarker> misread = new ArrayList<>();
        for (int i = 0; i < laid.size(); i++) {
            double[] corners = laid.get(i).corners();
            double side = Math.hypot(corners[2] - corners[0], corners[3] - corners[1]);
            if (Arrays.stream(far, 4 * i, 4 * i + 4).allMatch(away -> away > side)) {
                misread.add(laid.get(i));
            }
        }
        return misread;
    }

    /** Markers of one edge alone say nothing of the other end of the sheet. */
    private static void requireSpread(double[] known, MeasuringSheet sheet) {
        double left = Double.MAX_VALUE;
        double right = 0;
        double top = Double.MAX_VALUE;
        double bottom = 0;
        for (int i = 0; i < known.length; i += 2) {
            left = Math.min(left, known[i]);
            right = Math.max(right, known[i]);
            top = Math.min(top, known[i + 1]);
            bottom = Math.max(bottom, known[i + 1]);
        }
        if (right - left < 0.55 * sheet.width() || bottom - top < 0.55 * sheet.height()) {
            throw new Refused("camera.sheet.oneside");
        }
    }

    private static double residual(ViewFit fit) {
        double[] far = fit.distances();
        double sum = 0;
        for (double d : far) {
            sum += d * d;
        }
        return Math.sqrt(sum / (2 * far.length));
    }

    private static void requireSharp(Photo photo, SeenSheet sheet, List<SeenMarker> seen) {
        double[] blur = seen.stream()
                .mapToDouble(marker -> MarkerEdges.blur(photo, marker.corners()))
                .sorted()
                .toArray();
        double scale = sheet.view()
                .pixelsPerMm(sheet.sheet().width() / 2, sheet.sheet().height() / 2);
        if (blur[blur.length / 2] / scale > WORST_BLUR_MM) {
            throw new Refused("camera.photo.blurred");
        }
    }

    private static void requireSure(SeenSheet seen, ViewFit fit) {
        double[] eye = seen.view().eye();
        double across = seen.sheet().width() / 2;
        double down = seen.sheet().height() / 2;
        double scale = seen.view().pixelsPerMm(across, down);
        double[] far = fit.distances();
        Arrays.sort(far);
        double most = far[far.length * 9 / 10];
        if (eye[2] >= 0 || scale <= 0) {
            throw new Refused("camera.sheet.twisted");
        }
        if (most / scale > 2 * WORST_RESIDUAL_MM || seen.residual() / scale > WORST_RESIDUAL_MM) {
            throw new Refused("camera.sheet.notflat");
        }
        double slant = Math.toDegrees(Math.acos(Math.min(1, Math.abs(seen.view().turn()[8]))));
        if (slant > 50) {
            throw new Refused("camera.sheet.slanted", Math.round(slant));
        }
        if (scale < 2.2) {
            throw new Refused("camera.sheet.small");
        }
    }
}
