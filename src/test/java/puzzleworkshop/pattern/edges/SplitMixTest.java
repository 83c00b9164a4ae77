package puzzleworkshop.pattern.edges;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class SplitMixTest {

    /** SplitMix64 seeded with 1234567: first values of the published reference implementation (from memory). */
    @Test
    void random_numbers_are_those_of_splitmix64() {
        SplitMix random = new SplitMix(1234567);
        assertThat(Long.toUnsignedString(random.nextLong())).isEqualTo("6457827717110365317");
        assertThat(Long.toUnsignedString(random.nextLong())).isEqualTo("3203168211198807973");
        assertThat(Long.toUnsignedString(random.nextLong())).isEqualTo("9817491932198370423");
    }
}
