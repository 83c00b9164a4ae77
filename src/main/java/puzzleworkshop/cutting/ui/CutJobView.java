package puzzleworkshop.cutting.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.router.BeforeEvent;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.HasUrlParameter;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import org.springframework.beans.factory.ObjectProvider;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.display.Formatter;

/** One cut by itself: a test cut, or one of an order looked at from the machine's list. */
@Route("machines/cuts")
@PermitAll
@StyleSheet("context://cutting.css")
public class CutJobView extends Div implements HasUrlParameter<Long>, HasDynamicTitle {

    private final transient CutJobs jobs;
    private final transient ObjectProvider<CutJobPanel> panels;
    private final transient Formatter figures;

    public CutJobView(CutJobs jobs, ObjectProvider<CutJobPanel> panels, Formatter figures) {
        this.jobs = jobs;
        this.panels = panels;
        this.figures = figures;
        addClassNames("pw-page", "cutting-job-page");
    }

    @Override
    public void setParameter(BeforeEvent event, Long id) {
        removeAll();
        add(new Anchor("machines", figures.text("cutting.back")));
        jobs.find(id)
                .ifPresentOrElse(
                        job -> {
                            Div section = new Div(panels.getObject().show(job));
                            section.addClassName("pw-section");
                            add(section);
                        },
                        () -> add(new Paragraph(figures.text("cutting.job.gone"))));
    }

    @Override
    public String getPageTitle() {
        return figures.text("cutting.job.page");
    }
}
