package puzzleworkshop;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;
import static puzzleworkshop.FloorsTest.HOUSE;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaParameter;
import com.tngtech.archunit.core.domain.JavaParameterizedType;
import com.tngtech.archunit.library.dependencies.SliceAssignment;
import com.tngtech.archunit.library.dependencies.SliceIdentifier;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.ObjectProvider;

/** Packages are small, know each other in one direction, and ask for their beans plainly. */
@DisplayNameGeneration(ReplaceUnderscores.class)
abstract class PackageRules {

    /** About twenty; package-info not counted. */
    private static final int MOST_FILES = 20;

    @Test
    void packages_know_each_other_in_one_direction_inside_rooms_too() {
        List<String> inCircles = FloorsTest.FLOORS.stream()
                .flatMap(List::stream)
                .filter(room -> slices().assignedFrom(partsOf(room))
                        .should()
                        .beFreeOfCycles()
                        .allowEmptyShould(true)
                        .evaluate(HOUSE.that(resideInAPackage("puzzleworkshop." + room + "..")))
                        .hasViolation())
                .toList();
        assertThat(inCircles).as("rooms whose parts know each other both ways").isEmpty();
    }

    private static SliceAssignment partsOf(String room) {
        String root = "puzzleworkshop." + room;
        return new SliceAssignment() {
            @Override
            public SliceIdentifier getIdentifierOf(JavaClass type) {
                String name = type.getPackageName();
                return name.equals(root) || name.startsWith(root + ".")
                        ? SliceIdentifier.of(name)
                        : SliceIdentifier.ignore();
            }

            @Override
            public String getDescription() {
                return "parts of " + room;
            }
        };
    }

    @Test
    void no_package_is_larger_than_one_can_hold_in_the_head() {
        Map<String, Integer> large = new TreeMap<>();
        for (JavaClass type : HOUSE) {
            if (type.isTopLevelClass() && !type.getSimpleName().equals("package-info")) {
                large.merge(type.getPackageName(), 1, Integer::sum);
            }
        }
        large.values().removeIf(files -> files <= MOST_FILES);
        assertThat(large).as("packages of more than " + MOST_FILES + " files").isEmpty();
    }

    @Test
    void no_simple_name_stands_for_two_things() {
        Map<String, List<String>> named = HOUSE.stream()
                .filter(type -> type.isTopLevelClass() && !type.getSimpleName().equals("package-info"))
                .collect(Collectors.groupingBy(
                        JavaClass::getSimpleName,
                        TreeMap::new,
                        Collectors.mapping(JavaClass::getPackageName, Collectors.toList())));
        named.values().removeIf(packages -> packages.size() == 1);
        assertThat(named).as("names of more than one class").isEmpty();
    }

    @Test
    void no_bean_that_is_always_there_is_asked_for_as_if_it_might_not_be() {
        noClasses()
                .that()
                // Answers while the program starts, before the rest is there.
                .resideOutsideOfPackage("puzzleworkshop.database..")
                .should()
                .callMethodWhere(describe(
                        "looks a bean up that may be missing",
                        call -> call.getTargetOwner().getName().startsWith("org.springframework.beans.factory.")
                                && (call.getName().equals("getIfAvailable")
                                        || call.getName().equals("ifAvailable")
                                        || call.getName().equals("getIfUnique")
                                        || call.getName().equals("ifUnique"))))
                .check(HOUSE);
    }

    @Test
    void beans_of_which_there_is_one_are_not_asked_for_as_if_there_were_several_or_none() {
        Map<String, List<String>> asked = new TreeMap<>();
        for (JavaClass type : HOUSE) {
            // Answers while the program starts, before the rest is there.
            if (type.getPackageName().startsWith("puzzleworkshop.database") || !asksForSeveral(type)) {
                continue;
            }
            List<String> single = type.getConstructors().stream()
                    .flatMap(made -> made.getParameters().stream())
                    .map(JavaParameter::getType)
                    .filter(JavaParameterizedType.class::isInstance)
                    .map(JavaParameterizedType.class::cast)
                    .filter(wanted -> wanted.toErasure().isEquivalentTo(ObjectProvider.class))
                    .map(wanted -> wanted.getActualTypeArguments().getFirst().toErasure())
                    .filter(wanted -> beansOf(wanted) == 1)
                    .map(JavaClass::getSimpleName)
                    .toList();
            if (!single.isEmpty()) {
                asked.put(type.getSimpleName(), single);
            }
        }
        assertThat(asked).isEmpty();
    }

    private static boolean asksForSeveral(JavaClass type) {
        return type.getMethodCallsFromSelf().stream()
                .anyMatch(call -> call.getTargetOwner().isEquivalentTo(ObjectProvider.class)
                        && (call.getName().equals("stream") || call.getName().equals("orderedStream")));
    }

    private static long beansOf(JavaClass wanted) {
        return HOUSE.stream()
                .filter(type -> type.isAssignableTo(wanted.getName()) && !type.isInterface())
                .count();
    }

    @Test
    void only_the_room_of_boards_holds_cuts_or_frees_a_sheet() {
        noClasses()
                .that()
                .resideOutsideOfPackages("puzzleworkshop.boards..", "puzzleworkshop.sheets")
                .should()
                .dependOnClassesThat()
                .haveFullyQualifiedName("puzzleworkshop.sheets.SheetHolds")
                .check(HOUSE);
    }
}
