"""Questions of throws turned round: which throw arrives, where throws can come down, whether a path could be one."""
