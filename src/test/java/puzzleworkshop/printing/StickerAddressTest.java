package puzzleworkshop.printing;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.http.HttpStatus;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.web.context.request.ServletWebRequest;

@DisplayNameGeneration(ReplaceUnderscores.class)
class StickerAddressTest {

    /** Nobody is asked: neither the runs nor the pictures are there. */
    private final StickerPreviewController stickers = new StickerPreviewController(null, null);

    @ParameterizedTest
    @ValueSource(longs = {0, -1, Long.MIN_VALUE})
    void an_address_that_can_be_no_order_is_not_found_and_no_fault(long order) {
        assertThat(stickers.sticker(order, "look", new ServletWebRequest(new MockHttpServletRequest()))
                        .getStatusCode())
                .isEqualTo(HttpStatus.NOT_FOUND);
    }
}
