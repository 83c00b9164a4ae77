package puzzleworkshop.artwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.security.test.web.servlet.setup.SecurityMockMvcConfigurers.springSecurity;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.io.ByteArrayInputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.setup.MockMvcBuilders;
import org.springframework.web.context.WebApplicationContext;
import puzzleworkshop.support.DatabaseTest;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class PictureControllerIT {

    @Autowired
    WebApplicationContext context;

    @Autowired
    Pictures pictures;

    MockMvc web;
    String address;

    @BeforeEach
    void a_picture() throws Exception {
        web = MockMvcBuilders.webAppContextSetup(context)
                .apply(springSecurity())
                .build();
        Picture picture = pictures.take(
                "a.png", new ByteArrayInputStream(SamplePictures.encode(SamplePictures.quarters(300, 200), "png")));
        address = "/" + Rendition.address(picture.id(), 200);
    }

    @Test
    void who_is_not_signed_in_sees_no_picture() throws Exception {
        assertThat(web.perform(get(address)).andReturn().getResponse().getStatus())
                .isNotEqualTo(200);
    }

    @Test
    void a_browser_may_keep_it_for_good() throws Exception {
        MockHttpServletResponse first =
                web.perform(get(address).with(user("Robin"))).andReturn().getResponse();
        assertThat(first.getStatus()).isEqualTo(200);
        assertThat(first.getContentType()).isEqualTo("image/jpeg");
        assertThat(first.getHeader("Cache-Control")).contains("immutable", "private");
        assertThat(first.getHeader("ETag")).startsWith("\"");
        MockHttpServletResponse again = web.perform(
                        get(address).with(user("Robin")).header("If-None-Match", first.getHeader("ETag")))
                .andReturn()
                .getResponse();
        assertThat(again.getStatus()).isEqualTo(304);
    }

    @Test
    void sizes_that_are_not_kept_and_unknown_pictures_are_not_found() throws Exception {
        assertThat(web.perform(get(address.replace("240", "241")).with(user("Robin")))
                        .andReturn()
                        .getResponse()
                        .getStatus())
                .isEqualTo(404);
        assertThat(web.perform(get("/pictures/00000000-0000-0000-0000-000000000000/240.jpg")
                                .with(user("Robin")))
                        .andReturn()
                        .getResponse()
                        .getStatus())
                .isEqualTo(404);
    }
}
