namespace Failwise; internal static class Placeholder;
