package floorgauge.eval.court.view;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;

/** Processor time of all threads of this process together: what a piece of work costs, however busy the machine is. */
final class ProcessorTime {

    private ProcessorTime() {}

    static long nanoseconds() {
        return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime();
    }
}
