package puzzleworkshop.delivery.address;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Currency;
import java.util.Map;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import puzzleworkshop.delivery.address.CountryFormat.Part;
import puzzleworkshop.measure.Sentence;

/** Orders of lines as in the Universal Postal Union's guides on postal addressing systems (from memory); made-up people. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class PostalAddressTest {

    @Test
    void in_germany_the_code_stands_before_the_town() {
        assertThat(address("DE", "Ada Reed", "Quay Street 4", "Northhaven", "24103", "")
                        .lines("DE"))
                .containsExactly("Ada Reed", "Quay Street 4", "24103 Northhaven");
    }

    @Test
    void in_britain_it_has_a_line_of_its_own_and_from_abroad_the_country_is_the_last_line() {
        assertThat(address("GB", "Bo Lind", "10 Mill Lane", "SOUTHTOWN", "so1 2ab", "")
                        .lines("DE"))
                .containsExactly("Bo Lind", "10 Mill Lane", "SOUTHTOWN", "SO1 2AB", "UNITED KINGDOM");
    }

    @Test
    void in_the_united_states_town_state_and_code_share_a_line() {
        assertThat(address("US", "Cy Moor", "12 Oak Street\nApt 3", "Springvale", "12345-6789", "NY")
                        .lines("US"))
                .containsExactly("Cy Moor", "12 Oak Street", "Apt 3", "Springvale, NY 12345-6789");
    }

    /** ISO 4217: the first two letters of a country's currency are the country's of ISO 3166-1. */
    @ParameterizedTest
    @CsvSource({
        "GBP, '', GB",
        "USD, '', US",
        "CHF, DE, CH",
        "EUR, AT, AT",
        "EUR, '', DE",
        "EUR, US, DE",
        "GBP, JE, JE",
        "GBP, DE, GB",
        "SEK, SE, SE"
    })
    void parcels_leave_from_where_the_house_is_paid_unless_the_computer_knows_it_closer(
            String money, String computer, String home) {
        assertThat(CountryFormat.home(Currency.getInstance(money), computer)).isEqualTo(home);
    }

    @Test
    void a_wrong_code_is_refused_with_the_countrys_name() {
        assertThat(address("GB", "Eve", "Street 1", "Town", "12345", "")
                        .faults()
                        .get(Part.POSTAL_CODE))
                .isEqualTo(Sentence.of("delivery.address.code", "12345", "United Kingdom"));
    }

    @Test
    void a_country_prefix_is_written_once_however_it_was_typed() {
        assertThat(address("SE", "Di Orr", "Storgatan 1", "Norrby", "SE-123 45", "")
                        .lines("DE"))
                .contains("SE-123 45 Norrby");
        assertThat(address("SE", "Di Orr", "Storgatan 1", "Norrby", "123 45", "")
                        .lines("DE"))
                .contains("SE-123 45 Norrby");
    }

    /** Shapes of codes as the countries' posts publish them (from memory). */
    @ParameterizedTest
    @CsvSource({
        "DE, 24103, true", "DE, 2410, false", "NL, 1234 AB, true", "NL, 1234, false", "GB, SW1A 1AA, true",
        "GB, 12345, false", "US, 12345, true", "US, 1234, false", "CA, K1A 0B1, true", "CA, 12345, false",
        "PL, 00-950, true", "PL, 0950, false", "CH, 8001, true", "FR, 75001, true", "JP, 100-0001, true",
        "SE, 123 45, true", "PT, 1000-001, true", "BR, 01000-000, true", "AU, 2000, true", "AU, 20000, false"
    })
    void a_postal_code_is_known_by_its_countrys_pattern(String country, String code, boolean right) {
        assertThat(address(country, "Eve", "Street 1", "Town", code, "NY")
                        .faults()
                        .containsKey(Part.POSTAL_CODE))
                .isEqualTo(!right);
    }

    @Test
    void where_there_are_no_codes_none_is_asked_for_and_no_empty_lines_stand() {
        PostalAddress address = address("HK", "Fay Holt", "1 Harbour Road", "Wan Chai", "", "");
        assertThat(address.faults()).isEmpty();
        assertThat(address.lines("HK")).noneMatch(String::isBlank);
    }

    @Test
    void what_is_missing_is_said_by_its_part() {
        assertThat(address("DE", "Gus", "", "", "", "").faults())
                .containsOnlyKeys(Part.STREET, Part.TOWN, Part.POSTAL_CODE);
    }

    @Test
    void every_country_can_be_written_and_none_loses_name_street_or_town_that_its_format_has() {
        for (String country : CountryFormat.countries(java.util.Locale.ENGLISH)) {
            String all = String.join(
                    "\n",
                    address(country, "NAME", "STREET", "TOWN", "", "REGION").lines("XX"));
            assertThat(all).as(country).contains("NAME").contains("STREET");
            if (CountryFormat.of(country).lines().contains("%C")) {
                assertThat(all).as(country).contains("TOWN");
            }
        }
    }

    @Test
    void plain_lines_are_read_for_the_form() {
        PostalAddress german = PostalAddress.proposed("Ada Reed", "Quay Street 4\n24103 Northhaven", "DE");
        assertThat(german.part(Part.STREET)).isEqualTo("Quay Street 4");
        assertThat(german.part(Part.POSTAL_CODE)).isEqualTo("24103");
        assertThat(german.part(Part.TOWN)).isEqualTo("Northhaven");
        PostalAddress british = PostalAddress.proposed("Bo Lind", "10 Mill Lane\nSouthtown\nSO1 2AB", "GB");
        assertThat(british.part(Part.TOWN)).isEqualTo("Southtown");
        assertThat(british.part(Part.POSTAL_CODE)).isEqualTo("SO1 2AB");
        assertThat(british.part(Part.STREET)).isEqualTo("10 Mill Lane");
        assertThat(PostalAddress.proposed("Cy", "", "DE").faults()).isNotEmpty();
    }

    private static PostalAddress address(
            String country, String name, String street, String town, String code, String region) {
        return new PostalAddress(
                country,
                Map.of(
                        Part.NAME,
                        name,
                        Part.STREET,
                        street,
                        Part.TOWN,
                        town,
                        Part.POSTAL_CODE,
                        code,
                        Part.REGION,
                        region));
    }
}
