package puzzleworkshop.access.roles;

import org.aopalliance.intercept.MethodInterceptor;
import org.aopalliance.intercept.MethodInvocation;
import org.springframework.aop.support.AopUtils;
import org.springframework.beans.factory.ObjectProvider;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.workshop.SignedIn;

/**
 * Stands before every public command of every service. What a screen asks for a maker is looked up in the {@link RoleTable};
 * what a command then asks of other services is the program's own business, so only the outermost call is looked at. A
 * command in no line is refused.
 */
final class ServiceGuard implements MethodInterceptor {

    private final RoleTable table;
    private final ObjectProvider<SignedIn> who;
    private final ThreadLocal<Boolean> inside = new ThreadLocal<>();

    ServiceGuard(RoleTable table, ObjectProvider<SignedIn> who) {
        this.table = table;
        this.who = who;
    }

    @Override
    public Object invoke(MethodInvocation call) throws Throwable {
        if (inside.get() != null || !isMaker()) {
            return call.proceed();
        }
        Class<?> service =
                call.getThis() == null ? call.getMethod().getDeclaringClass() : AopUtils.getTargetClass(call.getThis());
        May may = table.of(service, call.getMethod().getName()).orElse(May.OWNER);
        if (may == May.OWNER) {
            throw new Refused("access.roles.owner-only");
        }
        inside.set(true);
        try {
            Object answer = call.proceed();
            return may == May.WITHOUT_MONEY ? WithoutMoney.of(answer) : answer;
        } catch (Refused refused) {
            // why it is refused may be told with an amount; then a maker hears that, and no amount
            throw WithoutMoney.of(refused.sentence()) == refused.sentence()
                    ? refused
                    : new Refused(WithoutMoney.NOT_TOLD);
        } finally {
            inside.remove();
        }
    }

    private boolean isMaker() {
        return who.getObject().isMaker();
    }
}
