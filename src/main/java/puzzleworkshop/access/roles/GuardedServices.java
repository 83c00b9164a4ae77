package puzzleworkshop.access.roles;

import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import org.springframework.aop.Advisor;
import org.springframework.aop.support.DefaultPointcutAdvisor;
import org.springframework.aop.support.StaticMethodMatcherPointcut;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.config.BeanDefinition;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Role;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.AnnotatedElementUtils;
import org.springframework.stereotype.Service;
import puzzleworkshop.workshop.SignedIn;

/** Puts the {@link ServiceGuard} before every service, outside of its transaction. */
@Configuration(proxyBeanMethods = false)
class GuardedServices {

    @Bean
    @Role(BeanDefinition.ROLE_INFRASTRUCTURE)
    static Advisor serviceGuard(ObjectProvider<SignedIn> who) {
        DefaultPointcutAdvisor advisor =
                new DefaultPointcutAdvisor(new Commands(), new ServiceGuard(RoleTable.read(), who));
        advisor.setOrder(Ordered.HIGHEST_PRECEDENCE);
        return advisor;
    }

    /** Public methods of services; what only screens are made of is no service. */
    private static final class Commands extends StaticMethodMatcherPointcut {

        @Override
        public boolean matches(Method method, Class<?> type) {
            return isService(type)
                    && Modifier.isPublic(method.getModifiers())
                    && method.getDeclaringClass() != Object.class;
        }
    }

    static boolean isService(Class<?> type) {
        return type.getName().startsWith("puzzleworkshop.")
                && !type.getPackageName().contains(".ui")
                && AnnotatedElementUtils.hasAnnotation(type, Service.class);
    }
}
