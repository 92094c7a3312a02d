package dev.reelproof.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.platform.engine.discovery.DiscoverySelectors.selectClass;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.platform.launcher.LauncherDiscoveryRequest;
import org.junit.platform.launcher.core.LauncherConfig;
import org.junit.platform.launcher.core.LauncherDiscoveryRequestBuilder;
import org.junit.platform.launcher.core.LauncherFactory;
import org.junit.platform.launcher.listeners.SummaryGeneratingListener;

/** An engine that does not fit the platform would leave every property test out in silence; this test would not. */
class PropertiesAreRunTest {

    /** One property that holds and one that does not. Nested, so that the build does not run it by itself. */
    static class TrueAndFalse {
        @Property
        void holds(@ForAll @DoubleRange(min = 0, max = 1) double x) {
            assertEquals(x, x + 0.0, 0);
        }

        @Property
        void doesNotHold(@ForAll @DoubleRange(min = 0, max = 1) double x) {
            assertEquals(0, x, 0.5);
        }
    }

    @Test
    void aFalsePropertyFailsAndATrueOnePasses() {
        LauncherDiscoveryRequest request = LauncherDiscoveryRequestBuilder.request()
                .selectors(selectClass(TrueAndFalse.class))
                .configurationParameter("jqwik.reporting.usejunitplatform", "true")
                .build();
        LauncherConfig alone = LauncherConfig.builder()
                .enableLauncherSessionListenerAutoRegistration(false)
                .enableLauncherDiscoveryListenerAutoRegistration(false)
                .enablePostDiscoveryFilterAutoRegistration(false)
                .enableTestExecutionListenerAutoRegistration(false)
                .build();
        SummaryGeneratingListener summary = new SummaryGeneratingListener();

        LauncherFactory.create(alone).execute(request, summary);

        assertEquals(1, summary.getSummary().getTestsSucceededCount());
        assertEquals(1, summary.getSummary().getTestsFailedCount());
    }
}
