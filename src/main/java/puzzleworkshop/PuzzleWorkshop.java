package puzzleworkshop;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.springframework.context.annotation.FullyQualifiedAnnotationBeanNameGenerator;

/**
 * Starts the workshop. Rooms are the packages below this one; see the map of rooms in DEVELOPERS.md. Two
 * rooms may give a class the same name, so beans are named in full.
 */
@SpringBootApplication(nameGenerator = FullyQualifiedAnnotationBeanNameGenerator.class)
public class PuzzleWorkshop {

    public static void main(String[] args) {
        SpringApplication.run(PuzzleWorkshop.class, args);
    }
}
