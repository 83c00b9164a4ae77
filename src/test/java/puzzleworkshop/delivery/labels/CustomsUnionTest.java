package puzzleworkshop.delivery.labels;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.delivery.address.CountryFormat.Part;
import puzzleworkshop.delivery.address.PostalAddress;

/** Members of the European Union in 2026 and the places apart from it, both from memory. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class CustomsUnionTest {

    private static boolean left(String from, String to, String postalCode) {
        return CustomsUnion.isLeft(from, new PostalAddress(to, Map.of(Part.POSTAL_CODE, postalCode)));
    }

    @Test
    void within_a_country_and_within_the_union_nothing_is_declared() {
        assertThat(left("US", "US", "10001")).isFalse();
        assertThat(left("DE", "FR", "75001")).isFalse();
        assertThat(left("FR", "MC", "98000")).isFalse();
        assertThat(left("AT", "ES", "28013")).isFalse();
        assertThat(left("SE", "PL", "00-001")).isFalse();
    }

    @Test
    void across_its_border_everything_is() {
        for (String country : List.of("CH", "NO", "GB", "LI", "US", "TR", "GL", "FO", "AX", "RE")) {
            assertThat(left("DE", country, "1000")).as(country).isTrue();
            assertThat(left(country, "DE", "24103")).as(country).isTrue();
        }
        assertThat(left("CH", "NO", "0150")).isTrue();
    }

    @Test
    void places_of_members_that_stand_apart_are_declared_too() {
        for (String place :
                List.of("ES 35001", "ES 38 001", "ES 51001", "IT 23041", "DE 27498", "FI 22100", "FR 97400")) {
            assertThat(left("NL", place.substring(0, 2), place.substring(3)))
                    .as(place)
                    .isTrue();
        }
        assertThat(left("DE", "DE", "27498")).as("the country's own").isFalse();
    }
}
