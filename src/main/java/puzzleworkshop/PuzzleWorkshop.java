package puzzleworkshop;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;

/** Starts the workshop. Rooms are the packages below this one; see the map of rooms in DEVELOPERS.md. */
@SpringBootApplication
public class PuzzleWorkshop {

    public static void main(String[] args) {
        SpringApplication.run(PuzzleWorkshop.class, args);
    }
}
