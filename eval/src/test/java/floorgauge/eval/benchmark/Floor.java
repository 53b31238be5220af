package floorgauge.eval.benchmark;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** The least work that a benchmark's call has to do, counted by hand. */
@Documented
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.METHOD)
public @interface Floor {

    /** Multiplications, additions and comparisons that the result depends on. */
    double operations();

    /** Bytes that have to be read and written. */
    double bytes();

    /** Whether the operations are those of a network, which a processor does many at a time: at the rate of a matrix product. */
    boolean network() default false;

    /** Power of the parameter named by {@link #scaledBy}: 2 where a picture's sides grow with it. */
    int power() default 1;

    /** Name of the parameter that operations and bytes are to be multiplied by; empty for none. */
    String scaledBy() default "";

    /** What one call does, in a few words. */
    String work();
}
