package puzzleworkshop.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.Wanted;
import puzzleworkshop.wood.play.WoodCase;
import puzzleworkshop.wood.play.WoodPeriod;

/** Reads a folder of {@code kind periods} instances, as the README of the shared data describes them. */
final class PeriodFolder {

    private PeriodFolder() {}

    static List<WoodCase> read(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            List<WoodCase> cases = new ArrayList<>();
            for (Path file :
                    files.filter(f -> f.toString().endsWith(".txt")).sorted().toList()) {
                cases.add(of(file.getFileName().toString().replace(".txt", ""), Files.readAllLines(file)));
            }
            return cases;
        }
    }

    static WoodCase of(String name, List<String> lines) {
        List<Wanted> usual = new ArrayList<>();
        List<WoodPeriod> periods = new ArrayList<>();
        List<ForSale> offers = null;
        List<Wanted> blanks = null;
        int expected = 0;
        boolean turning = false;
        for (String line : lines) {
            String[] words = line.strip().split("\\s+");
            switch (words[0]) {
                case "kind" -> require(words[1].equals("periods"), name, line);
                case "periods" -> expected = number(words[1]);
                case "rotate" -> turning = words[1].equals("yes");
                case "usual" -> usual.add(new Wanted(number(words[1]), number(words[2])));
                case "period" -> {
                    if (offers != null) {
                        periods.add(new WoodPeriod(offers, blanks));
                    }
                    offers = new ArrayList<>();
                    blanks = new ArrayList<>();
                }
                case "board" -> offers.add(new ForSale(number(words[1]), number(words[2]), number(words[3])));
                case "blank" -> blanks.add(new Wanted(number(words[1]), number(words[2])));
                default -> {
                    // source, remarks and empty lines
                }
            }
        }
        if (offers != null) {
            periods.add(new WoodPeriod(offers, blanks));
        }
        require(periods.size() == expected && expected > 0, name, "periods " + expected);
        return new WoodCase(name, turning, 0, usual, periods);
    }

    private static int number(String word) {
        return Math.toIntExact(Math.round(Double.parseDouble(word)));
    }

    private static void require(boolean holds, String name, String line) {
        if (!holds) {
            throw new IllegalArgumentException(name + ": not an instance of periods at '" + line + "'");
        }
    }
}
